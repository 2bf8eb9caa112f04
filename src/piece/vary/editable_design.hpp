#pragma once
// A design whose values can be changed one by one, and read again.

#include "facts/facts.hpp"
#include "piece/model/piece.hpp"
#include "piece/read/read_design.hpp"
#include "piece/text/value.hpp"
#include "piece/vary/design_edit.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// "slat / long rail": a joint as edits name it.
std::string id_of(const Joint& joint);
/// A length as a design states it, with or without a unit; nothing where the value is none.
std::optional<Length> length_stated(const DesignValue& value, LengthUnit unit);

/// A design, its pattern written out, with changes put in.
class EditableDesign {
public:
    /// @param text  the one that the piece was read from, with the same facts; must outlive this, as must piece and facts
    EditableDesign(std::string_view text, const Piece& piece, const Facts& facts);

    /// The changed piece, or the faults that it then has. An edit of a table that the design lacks is a fault too.
    DesignRead with(const std::vector<DesignEdit>& edits) const;
    /// The changed design as a text, itself a valid design where `with` gives a piece; comments and patterns are gone.
    std::string text_with(const std::vector<DesignEdit>& edits) const;
    /// The value that a part states under a key; nullptr where it states none.
    const DesignValue* part_value(std::string_view id, std::string_view key) const;
    const Piece& piece() const { return piece_; }

private:
    bool put_in(DesignValue& root, const DesignEdit& edit) const;

    std::string_view text_;
    const Piece& piece_;
    const Facts& facts_;
    DesignValue root_;
};

} // namespace jointwright
