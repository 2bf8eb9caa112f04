#pragma once
// Reading a design for the verbs that take one.

#include "app/answer.hpp"
#include "facts/facts.hpp"
#include "piece/model/piece.hpp"

#include <string>
#include <variant>

namespace jointwright {

struct Design {
    std::string text;
    Piece piece;
};

/// The design in a file (`-`: standard input), or the answer that tells every fault of it with its place.
std::variant<Design, Answer> open_design(const std::string& path, const Facts& facts);

/// The fault of a missing DESIGN.
Fault missing_design(const std::string& verb);

} // namespace jointwright
