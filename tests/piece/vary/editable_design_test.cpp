// Single values of a design changed by table and key, and the design read again.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

#include "piece/vary/editable_design.hpp"
#include "piece/vary/size_edits.hpp"

using namespace jointwright;
using namespace jointwright::testing;
using checked::built_in_design;
using checked::piece_of;
using Table = DesignEdit::Table;

namespace {

/// A board on two unlike posts: the left one is placed by a list, the right one is a further copy; the board by its top side.
std::string board_on_posts()
{
    return checked::design({
        checked::head_text({.name = "Board", .more = "size = [1000, 120, 420]"}),
        checked::wood_text("white oak"),
        checked::part_text("post", {400, 120, 40}, "z", "x", "[0, 0, 0]", "copies = [ { at = [960, 0, 0] } ]"),
        checked::part_text("board", {1000, 120, 20}, "x", "z", "{ left = 0, front = 0, top = 420 }"),
        checked::joint_text("board", "post", "face", "PVA"),
    });
}

struct Edited {
    explicit Edited(std::string design) : text(std::move(design)), piece(piece_of(text)), editable(text, piece, shared_facts()) {}
    Piece with(const std::vector<DesignEdit>& edits) const
    {
        DesignRead read = editable.with(edits);
        if (!read.piece) throw std::logic_error(write_faults(read.faults, "edited", text));
        return *std::move(read.piece);
    }
    std::string text;
    Piece piece;
    EditableDesign editable;
};

const Box& box_of(const Piece& piece, const std::string& name) { return piece.copies[piece.copies_named(name).front()].box; }

} // namespace

TEST_CASE("A value is put in by table and key, and the text of it reads alike", "[edit]")
{
    const Edited design(board_on_posts());
    const std::vector<DesignEdit> edits{
        length_edit(Table::part, "post", "thickness", millimetres(36)),
        text_edit(Table::part, "board", "rings", "quarter"),
        length_edit(Table::joint, "board / post", "glued.length", millimetres(25)),
        text_edit(Table::room, "", "shop_temperature", "12 C"),
    };
    for (const Piece& piece : {design.with(edits), piece_of(design.editable.text_with(edits))}) {
        CHECK_THAT(in_metres(piece.parts[0].thickness), WithinAbs(0.036, 1e-12));
        CHECK(piece.parts[1].own_rings);
        CHECK_THAT(in_degrees(piece.parts[1].rings.front()), WithinAbs(90, 1e-9));
        REQUIRE(piece.joints[0].glued); // the table was not there before
        CHECK_THAT(in_metres(piece.joints[0].glued->length), WithinAbs(0.025, 1e-12));
        CHECK_THAT(piece.room.shop.celsius(), WithinAbs(12, 1e-9));
    }
    CHECK_THAT(in_metres(design.with({}).parts[0].thickness), WithinAbs(0.040, 1e-12)); // the design itself stays
}

TEST_CASE("A key is taken away, and a kind changes with what goes with it", "[edit]")
{
    const Edited design(board_on_posts());
    const Piece dry =
        design.with({take_away(Table::joint, "board / post", "glue"), take_away(Table::joint, "board / post", "glued")});
    CHECK_FALSE(dry.joints[0].glue);
    const Piece held =
        design.with({take_away(Table::joint, "board / post", "glue"), text_edit(Table::joint, "board / post", "kind", "buttons"),
                     count_edit(Table::joint, "board / post", "buttons.count", 3)});
    CHECK(held.joints[0].kind == JointKind::buttons);
    REQUIRE(held.joints[0].buttons);
    CHECK(held.joints[0].buttons->count == 3);
    // Buttons with glue are refused, not half taken.
    const DesignRead refused = design.editable.with({text_edit(Table::joint, "board / post", "kind", "buttons"),
                                                     count_edit(Table::joint, "board / post", "buttons.count", 3)});
    CHECK_FALSE(refused.piece);
    CHECK_FALSE(refused.faults.empty());
}

TEST_CASE("An edit of what the design lacks is a fault", "[edit]")
{
    const Edited design(board_on_posts());
    for (const DesignEdit& edit : {length_edit(Table::part, "shelf", "thickness", millimetres(20)),
                                   text_edit(Table::joint, "post / board", "glue", "PVA"), // the other way round
                                   length_edit(Table::part, "post", "copies.1.at.0", millimetres(20)),
                                   length_edit(Table::part, "post", "copies.x.at", millimetres(20))}) {
        CAPTURE(edit.id, edit.key);
        const DesignRead read = design.editable.with({edit});
        CHECK_FALSE(read.piece);
        REQUIRE(read.faults.size() == 1);
        CHECK(read.faults.front().id == "unknown-key");
    }
}

TEST_CASE("A part grows from the side that is held, its further copies too", "[edit]")
{
    const Edited design(board_on_posts());
    const auto post = [&](double mm, HeldSide held) {
        return design.with(size_edits(design.editable, 0, VariedSize::thickness, millimetres(mm), held));
    };
    const Piece stated = post(36, HeldSide::stated), other = post(36, HeldSide::other);
    CHECK_THAT(box_of(stated, "post #1").hi[0], WithinAbs(0.036, 1e-9));
    CHECK_THAT(box_of(stated, "post #2").lo[0], WithinAbs(0.960, 1e-9));
    CHECK_THAT(box_of(other, "post #1").lo[0], WithinAbs(0.004, 1e-9));
    CHECK_THAT(box_of(other, "post #1").hi[0], WithinAbs(0.040, 1e-9));
    CHECK_THAT(box_of(other, "post #2").lo[0], WithinAbs(0.964, 1e-9));
    CHECK_THAT(box_of(other, "post #2").hi[0], WithinAbs(1.000, 1e-9));
}

TEST_CASE("A part that is placed by its far side grows the other way, and the size of the piece goes with what passes it",
          "[edit]")
{
    const Edited design(board_on_posts());
    // By its top the board would grow down, into the posts: refused. With its underside held it passes the stated 420 mm.
    CHECK_FALSE(
        design.editable.with(size_edits(design.editable, 1, VariedSize::thickness, millimetres(25), HeldSide::stated)).piece);
    const Piece thick = design.with(size_edits(design.editable, 1, VariedSize::thickness, millimetres(25), HeldSide::other));
    CHECK_THAT(box_of(thick, "board").lo[2], WithinAbs(0.400, 1e-9));
    CHECK_THAT(box_of(thick, "board").hi[2], WithinAbs(0.425, 1e-9));
    REQUIRE(thick.size);
    CHECK_THAT((*thick.size)[2], WithinAbs(0.425, 1e-9));
    CHECK_THAT((*thick.size)[0], WithinAbs(1.000, 1e-9));
}

TEST_CASE("Sizes in inches are written as such, and a pattern is written out", "[edit]")
{
    const Edited bench(built_in_design("boot-bench"));
    const std::vector<DesignEdit> edits{length_edit(Table::part, "slat", "thickness", metres(0.0254 * 11 / 16))};
    CHECK_THAT(bench.editable.text_with(edits), ContainsSubstring("thickness = 0.6875\n"));
    CHECK_THAT(in_metres(piece_of(bench.editable.text_with(edits))
                             .parts[bench.piece.copies[bench.piece.copies_named("slat").front()].part]
                             .thickness),
               WithinAbs(0.01746250, 1e-9));

    const std::string* starter = shared_facts().text("patterns/mitred-frame.toml");
    REQUIRE(starter);
    const Edited frame(*starter);
    const std::string& joint = frame.piece.joints.front().first;
    CHECK_FALSE(joint.empty());
    const Piece changed =
        piece_of(frame.editable.text_with({text_edit(Table::part, frame.piece.parts[0].id, "rings", "quarter")}));
    CHECK(changed.copies.size() == frame.piece.copies.size());
    CHECK(changed.parts[0].own_rings);
    CHECK_FALSE(frame.piece.parts[0].own_rings);
}
