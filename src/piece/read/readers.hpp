#pragma once
// The readers of a design, one for each kind of table. Each reports its faults to the Reading and fills in what it could read.

#include "piece/model/piece.hpp"
#include "piece/model/placement.hpp"
#include "piece/read/read_values.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// The ids of all parts that the design names, with the number of copies of those that could be placed.
using PartIds = std::map<std::string, std::optional<int>, std::less<>>;

/// [piece]: name, units, use, size. `carries` and `wall` wait for the parts.
void read_piece_head(DesignTable& table, Piece& piece);
/// [piece]: carries, wall.
void read_piece_names(DesignTable& table, const PartIds& ids, Piece& piece);
void read_room(DesignTable& table, Room& room);
void read_woods(Reading& reading, const DesignValue& list, Piece& piece);
/// All [[part]] tables, with their copies.
PartIds read_parts(Reading& reading, const DesignValue& list, Piece& piece);
void read_joints(Reading& reading, const DesignValue& list, const PartIds& ids, Piece& piece);
/// The tables of sizes of one joint, and the keys that go with glue.
void read_joint_sizes(DesignTable& table, Joint& joint, bool kind_known);
void read_loads(Reading& reading, const DesignValue& list, const PartIds& ids, Piece& piece);
void read_limits(DesignTable& table, Limits& limits);

/// The keys of a part that shape it. @param sound  sizes and axes could be read, so that limits that hang on them can be checked
void read_shape(DesignTable& table, Part& part, bool sound);
/// The keys of a part that place it; nothing when it cannot be placed.
std::optional<Placement> read_placement(DesignTable& table, const Part& part, bool sound, const Piece& piece);
/// Reports copies that stick out of the stated size.
void check_outside(Reading& reading, const Piece& piece, std::size_t first_copy);

// Values that several tables have.
/// An id: some text without # and /, nor control characters.
std::optional<std::string> as_id(Reading& reading, const DesignValue& value, std::string_view what);
/// Ring cuts: a word, degrees, or a list of them.
std::optional<std::vector<Angle>> as_rings(Reading& reading, const DesignValue& value);
/// Reads "urethane varnish, 2 coats". `finish` stays empty for "bare". False when it could not be read.
bool read_finish(Reading& reading, const DesignValue& value, std::optional<Finish>& finish);
/// A glue's name as the tables spell it.
std::optional<std::string> as_glue(Reading& reading, const DesignValue& value);
/// Moisture content of wood, above 0 and at most 30 %.
std::optional<MoistureContent> as_moisture(Reading& reading, const DesignValue& value, std::string_view what);
/// The name of a part or a copy that the design has: "slat", "slat #3".
std::optional<std::string> as_part_name(Reading& reading, const DesignValue& value, std::string_view what, const PartIds& ids);
std::optional<std::vector<std::string>> as_part_names(Reading& reading, const DesignValue& value, std::string_view what,
                                                      const PartIds& ids);
/// The tables of an array of tables; reports `[wood]` written for `[[wood]]`.
std::vector<const DesignValue*> tables_of(Reading& reading, const DesignValue& list, std::string_view name);

/// Defaults that may touch a verdict, one sentence each.
std::vector<std::string> reading_assumptions(const Piece& piece, const Facts& facts);
/// Keys and joint kinds of the design that no check uses yet, one sentence each. The one place that decides it.
std::vector<std::string> unused_in(const Piece& piece);

} // namespace jointwright
