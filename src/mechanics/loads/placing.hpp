#pragma once
// Placing loads on the parts that carry, for the files of load cases. SI doubles: metres, newtons.

#include "facts/facts.hpp"
#include "mechanics/loads/load_cases.hpp"
#include "piece/model/lying.hpp"

#include <string>
#include <vector>

namespace jointwright {

/// The rectangle round some copies.
Plan joint_plan(const Piece& piece, const std::vector<std::size_t>& copies);

/// A force spread over a patch, shared by area among the copies under it. Empty where none lies under it.
std::vector<CopyLoad> spread(const Piece& piece, const std::vector<std::size_t>& copies, const Plan& patch, double force);

/// A force on a stretch of a copy about a place along its grain, as drawn; across it as broad as said, at its middle.
CopyLoad load_at(const Lying& lying, std::size_t copy, double along, double length, double breadth, double force);
/// A force on the whole of a copy.
CopyLoad load_on_all(const Lying& lying, std::size_t copy, double force);

/// A patch about its middle.
Plan patch_at(double x, double y, double size_x, double size_y);

/// Adds a case; nothing without loads. Only service loads count for sag, where `sag` says so.
void add_case(LoadCases& cases, std::string name, DemandKind kind, LoadDuration duration, bool sag, std::vector<CopyLoad> loads,
              const Citation& cite);

/// What each of so many people weighs who sit side by side: the stated sitter, else the fewer the heavier [N].
Datum<double> weight_of_each(const Piece& piece, const Facts& facts, int people);
/// "25,000 times": the repeats of the durability test at the piece's level.
std::string repeats_words(const Piece& piece, const Facts& facts);

/// People who sit on a seat, sit down hard and stand on it, wherever that asks most of it.
void add_seat_cases(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried);

/// Pushes on a loaded seat, by its level: sideways along its longer side, and to front and back.
void add_seat_pushes(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried);
/// People leaning back against the back of a seat: one at its places, and all side by side, just short of tipping it; by the ten thousand; and
/// one who tilts it onto its rear feet. Nothing without a back.
void add_back_loads(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried);
/// Pushes on a loaded table top.
void add_table_pushes(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried);
/// A person leaning sideways on a case that stands on the floor.
void add_case_pushes(LoadCases& cases, const Piece& piece, const Facts& facts);
/// The piece lifted by the edge of one of the parts that carry, with a jerk, just short of leaving the floor.
void add_lifts(LoadCases& cases, const Piece& piece, const Facts& facts, const std::vector<std::size_t>& carried);

} // namespace jointwright
