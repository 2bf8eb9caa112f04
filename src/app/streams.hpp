#pragma once
// Standard input, output and error.

#include <string>
#include <string_view>
#include <system_error>

namespace jointwright {

/// Makes writing to a closed pipe or past a size limit an error instead of a signal, and fills closed standard streams so that no file opened later takes
/// their number. To be called first.
void prepare_streams();

/// Writes all of the text to a file descriptor; the error that stopped it, if any.
std::error_code write_all(int descriptor, std::string_view text);

/// Why the system refused, in words for a maker. @param error  an errno
std::string why_not(int error);

/// Whether colour is wanted on standard output: it is a terminal, and NO_COLOR is absent or empty.
bool terminal_takes_colour();

} // namespace jointwright
