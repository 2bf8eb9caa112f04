// The designs and starters that come with the program.

#include "catch.hpp"

#include "piece/contacts/contact.hpp"
#include "piece/tiny_design.hpp"

#include <algorithm>

using namespace jointwright;

namespace {

Piece shipped(const char* path)
{
    const auto found = embedded_data().find(path);
    REQUIRE(found != embedded_data().end());
    return tiny::piece(found->second);
}

std::size_t count_contacts(const Piece& piece, std::string_view first, JointKind kind)
{
    const auto search = find_contacts(piece);
    return static_cast<std::size_t>(std::count_if(search.contacts.begin(), search.contacts.end(), [&](const Contact& c) {
        return c.joint && piece.joints[*c.joint].kind == kind && piece.part_of(c.first).id == first;
    }));
}

} // namespace

TEST_CASE("The boot bench has its four parts and a housing wherever a slat crosses a rail", "[designs]")
{
    const Piece piece = shipped("designs/boot-bench.toml");
    std::vector<std::string> ids;
    for (const Part& part : piece.parts) ids.push_back(part.id);
    CHECK(ids == std::vector<std::string>{"leg", "long rail", "side rail", "slat"});
    CHECK(piece.units == LengthUnit::inch);
    CHECK(piece.copies_named("slat").size() == 17);
    CHECK(count_contacts(piece, "slat", JointKind::housing) == 34);
    CHECK(count_contacts(piece, "long rail", JointKind::tenon) == 4);
    CHECK(count_contacts(piece, "side rail", JointKind::tenon) == 4);
}

TEST_CASE("The hall table is glued to its top at both end aprons, and only there", "[designs]")
{
    const Piece piece = shipped("designs/hall-table-glued-top.toml");
    CHECK(count_contacts(piece, "top", JointKind::face) == 2);
    for (const Contact& contact : find_contacts(piece).contacts) {
        const bool top = piece.part_of(contact.first).id == "top" || piece.part_of(contact.second).id == "top";
        if (top && !contact.joint) CHECK(contact.patches.front().area > 0); // dry: rests on legs and long aprons
    }
}

TEST_CASE("The window seat is of one of two woods, in millimetres", "[designs]")
{
    const Piece piece = shipped("designs/window-seat-metric.toml");
    CHECK(piece.units == LengthUnit::millimetre);
    CHECK(piece.woods.at(0).species == std::vector<std::string>{"white ash", "green ash"});
    CHECK(count_contacts(piece, "slat", JointKind::face) == 20);
    CHECK(count_contacts(piece, "bearer", JointKind::tenon) == 4);
}

TEST_CASE("Every starter begins with a comment that says what it is, and reads clean", "[designs]")
{
    std::size_t starters = 0;
    for (const auto& [path, text] : embedded_data()) {
        if (path.rfind("patterns/", 0) != 0) continue;
        ++starters;
        CAPTURE(path);
        CHECK(text.rfind("# ", 0) == 0);
        CHECK(text.find('\n') < 80);
        CHECK(tiny::messages(text).empty());
    }
    CHECK(starters >= 2);
}
