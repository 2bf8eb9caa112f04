#pragma once
// One wood file into a record.

#include "facts/table_reader.hpp"
#include "facts/wood_record.hpp"

namespace jointwright {

/// @throws BrokenData  the text is not such a file
WoodRecord read_wood_record(const TableReader& reader, std::string_view text, std::string_view file);

} // namespace jointwright
