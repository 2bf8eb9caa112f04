// One part of a design with another size: what stays, what moves, what grows.

#include "catch.hpp"
#include "checks/checked.hpp"

#include "piece/contacts/contact.hpp"
#include "piece/vary/variation.hpp"

#include <set>

using namespace jointwright;
using namespace jointwright::testing;
using checked::built_in_design;
using checked::piece_of;

namespace {

std::size_t part_index(const Piece& piece, const std::string& id)
{
    for (std::size_t p = 0; p < piece.parts.size(); ++p)
        if (piece.parts[p].id == id) return p;
    throw std::logic_error("no part " + id);
}

/// A design with one part of another size, read anew.
struct Varied {
    Varied(std::string design, const std::string& part, VariedSize what)
        : text(std::move(design)), piece(piece_of(text)), variation(text, piece, shared_facts(), part_index(piece, part), what)
    {
    }
    Piece with(double more_metres, HeldSide held = HeldSide::stated) const
    {
        DesignRead read = variation.with_size(variation.as_drawn() + metres(more_metres), held);
        if (!read.piece) throw std::logic_error(write_faults(read.faults, "varied", text));
        return *std::move(read.piece);
    }
    std::string text;
    Piece piece;
    Variation variation;
};

const Box& box_of(const Piece& piece, const std::string& name) { return piece.copies[piece.copies_named(name).front()].box; }

std::set<std::pair<std::size_t, std::size_t>> touching_pairs(const Piece& piece)
{
    std::set<std::pair<std::size_t, std::size_t>> pairs;
    for (const Contact& c : find_contacts(piece).contacts) pairs.insert(std::minmax(c.first, c.second));
    return pairs;
}

void check_same_place(const Piece& a, const Piece& b)
{
    REQUIRE(a.copies.size() == b.copies.size());
    for (std::size_t c = 0; c < a.copies.size(); ++c)
        for (std::size_t i = 0; i < 3; ++i) {
            CAPTURE(a.label(c), i);
            CHECK_THAT(b.copies[c].box.lo[i], WithinAbs(a.copies[c].box.lo[i], 2e-9));
            CHECK_THAT(b.copies[c].box.hi[i], WithinAbs(a.copies[c].box.hi[i], 2e-9));
            CHECK(a.copies[c].mirrored[i] == b.copies[c].mirrored[i]);
        }
}

} // namespace

TEST_CASE("A part varied to the size that it has is the design itself, in every example and starter", "[variation]")
{
    for (const std::string folder : {"designs", "patterns"})
        for (const std::string& path : shared_facts().paths_under(folder)) {
            if (path.find(".toml") == std::string::npos) continue;
            const std::string& text = *shared_facts().text(path);
            const Piece piece = piece_of(text);
            for (std::size_t p = 0; p < piece.parts.size(); ++p)
                for (const VariedSize what : {VariedSize::thickness, VariedSize::width, VariedSize::length}) {
                    CAPTURE(path, piece.parts[p].id, name_of(what));
                    const Variation variation(text, piece, shared_facts(), p, what);
                    if (variation.hindrance()) continue;
                    const DesignRead read = variation.with_size(variation.as_drawn(), HeldSide::stated);
                    INFO((read.piece ? std::string() : write_faults(read.faults, path, text)));
                    REQUIRE(read.piece);
                    check_same_place(piece, *read.piece);
                    CHECK(read.piece->loads.size() == piece.loads.size());
                }
        }
}

TEST_CASE("A thinner rail keeps the side that its design states, mirrored copies the mirrored one", "[variation]")
{
    const Varied bench(built_in_design("boot-bench"), "long rail", VariedSize::thickness);
    const Piece thin = bench.with(-0.005);
    CHECK_THAT(box_of(thin, "long rail #1").lo[1], WithinAbs(box_of(bench.piece, "long rail #1").lo[1], 1e-9));
    CHECK_THAT(box_of(thin, "long rail #1").hi[1], WithinAbs(box_of(bench.piece, "long rail #1").hi[1] - 0.005, 1e-9));
    CHECK_THAT(box_of(thin, "long rail #2").hi[1], WithinAbs(box_of(bench.piece, "long rail #2").hi[1], 1e-9));
    CHECK_THAT(box_of(thin, "long rail #2").lo[1], WithinAbs(box_of(bench.piece, "long rail #2").lo[1] + 0.005, 1e-9));
    CHECK(bench.variation.words(HeldSide::stated) == "its front side stays where it is");
    CHECK_THAT(box_of(thin, "leg #4").lo[0], WithinAbs(box_of(bench.piece, "leg #4").lo[0], 1e-9));

    const Piece other = bench.with(-0.005, HeldSide::other);
    CHECK_THAT(box_of(other, "long rail #1").hi[1], WithinAbs(box_of(bench.piece, "long rail #1").hi[1], 1e-9));
    CHECK_THAT(box_of(other, "long rail #2").lo[1], WithinAbs(box_of(bench.piece, "long rail #2").lo[1], 1e-9));
}

TEST_CASE("A thicker top may pass the stated size where nothing is mirrored about it", "[variation]")
{
    const Varied table(built_in_design("cherry-top-on-buttons"), "top", VariedSize::thickness);
    const Piece thick = table.with(0.01, HeldSide::other);
    CHECK_THAT(box_of(thick, "top").lo[2], WithinAbs(box_of(table.piece, "top").lo[2], 1e-9));
    CHECK_THAT(box_of(thick, "top").hi[2], WithinAbs(box_of(table.piece, "top").hi[2] + 0.01, 1e-9));
    CHECK_THAT(box_of(thick, "leg #4").lo[0], WithinAbs(box_of(table.piece, "leg #4").lo[0], 1e-9));
}

TEST_CASE("A longer rail draws the bench out: legs move along, slats spread, everything stays together", "[variation]")
{
    const Varied bench(built_in_design("boot-bench"), "long rail", VariedSize::length);
    const double more = 0.1;
    const Piece longer = bench.with(more);
    CHECK_THAT((*longer.size)[0], WithinAbs((*bench.piece.size)[0] + more, 1e-9));
    CHECK_THAT(in_metres(longer.parts[part_index(longer, "long rail")].length),
               WithinAbs(in_metres(bench.variation.as_drawn()) + more, 1e-9));
    for (std::size_t c = 0; c < longer.copies.size(); ++c) {
        const std::string& id = longer.part_of(c).id;
        const Box &now = longer.copies[c].box, &before = bench.piece.copies[c].box;
        CAPTURE(longer.label(c));
        const bool right = before.middle(Axis::x) > (*bench.piece.size)[0] / 2;
        if (id == "leg" || id == "side rail") CHECK_THAT(now.lo[0], WithinAbs(before.lo[0] + (right ? more : 0), 1e-9));
        if (id == "slat") CHECK_THAT(now.size(Axis::x), WithinAbs(before.size(Axis::x), 1e-9));
        CHECK_THAT(now.lo[1], WithinAbs(before.lo[1], 1e-9));
    }
    // The row keeps its ends and even gaps: 17 slats, 16 gaps.
    CHECK_THAT(box_of(longer, "slat #1").lo[0], WithinAbs(box_of(bench.piece, "slat #1").lo[0], 1e-9));
    CHECK_THAT(box_of(longer, "slat #17").lo[0], WithinAbs(box_of(bench.piece, "slat #17").lo[0] + more, 1e-9));
    const auto gap = [](const Piece& piece, int n) {
        return box_of(piece, "slat #" + std::to_string(n + 1)).lo[0] - box_of(piece, "slat #" + std::to_string(n)).hi[0];
    };
    for (int n = 1; n < 17; ++n) CHECK_THAT(gap(longer, n), WithinAbs(gap(bench.piece, n) + more / 16, 3e-9));
    CHECK(touching_pairs(longer) == touching_pairs(bench.piece));
    // The crate stands in the middle, before and after.
    CHECK_THAT(longer.loads.front().at[0], WithinAbs(bench.piece.loads.front().at[0] + more / 2, 1e-9));
}

TEST_CASE("A wider bookcase: what spans with the shelf grows with it", "[variation]")
{
    const Varied bookcase(built_in_design("wide-shelf-bookcase"), "shelf", VariedSize::length);
    const Piece narrow = bookcase.with(-0.3);
    CHECK_THAT(in_metres(narrow.parts[part_index(narrow, "rail")].length),
               WithinAbs(in_metres(bookcase.piece.parts[part_index(bookcase.piece, "rail")].length) - 0.3, 1e-9));
    CHECK(touching_pairs(narrow) == touching_pairs(bookcase.piece));
}

TEST_CASE("Lengths that end out of line cannot draw the piece out", "[variation]")
{
    const std::string staggered = checked::still_head(true) + R"(
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "stave"
wood = "oak"
length = 400
width = 60
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
copies = [ { at = [150, 80, 0] } ]
)";
    const Varied staves(staggered, "stave", VariedSize::length);
    REQUIRE(staves.variation.hindrance());
    CHECK_THAT(*staves.variation.hindrance(), ContainsSubstring("without ending in line"));
    CHECK_FALSE(Varied(staggered, "stave", VariedSize::width).variation.hindrance());
}

TEST_CASE("Notches of a part that grows keep their share of its length", "[variation]")
{
    const std::string board = checked::still_head(true) + R"(
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "board"
wood = "oak"
length = 400
width = 60
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
notches = [ { from = "top", depth = 5, width = 10, first = 40, step = 100, count = 3 } ]
)";
    const Piece longer = Varied(board, "board", VariedSize::length).with(0.2);
    CHECK_THAT(in_metres(longer.parts[0].notches[0].first), WithinAbs(0.060, 1e-9));
    CHECK_THAT(in_metres(longer.parts[0].notches[0].step), WithinAbs(0.150, 1e-9));
    CHECK_THAT(in_metres(longer.parts[0].notches[0].width), WithinAbs(0.010, 1e-9));
}
