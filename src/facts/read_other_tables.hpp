#pragma once
// Rooms, glues and finishes into records.

#include "facts/table_reader.hpp"

#include <vector>

namespace jointwright {

std::vector<RoomRecord> read_rooms(const TableReader& reader, std::string_view text, std::string_view file);
std::vector<GlueRecord> read_glues(const TableReader& reader, std::string_view text, std::string_view file);
std::vector<FinishRecord> read_finishes(const TableReader& reader, std::string_view text, std::string_view file);

} // namespace jointwright
