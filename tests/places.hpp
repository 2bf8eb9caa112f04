#pragma once
// Where the tests find the data folder and the program: known to one source, so that the others compile alike in every checkout.

#include <string>

namespace jointwright::testing {

/// The folder `data` of the checkout.
const std::string& data_folder();
/// The built program.
const std::string& program_path();

} // namespace jointwright::testing
