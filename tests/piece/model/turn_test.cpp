#include "catch.hpp"

#include "facts/shared_facts.hpp"
#include "piece/contacts/contact.hpp"
#include "piece/model/turn.hpp"
#include "piece/read/read_design.hpp"

#include <cmath>
#include <string>

using namespace jointwright;
using jointwright::testing::shared_facts;

namespace {

/// A post, and a brace turned so that its end rests against the post.
std::string design(const std::string& brace, const std::string& joint = "")
{
    return R"(
[piece]
name = "braced post"
units = "mm"
use = "none"
size = [2000, 1000, 1000]
[room]
driest = { moisture = 6 }
dampest = { moisture = 12 }
moisture_at_glue_up = 8
[[wood]]
id = "oak"
species = "white oak"
rings = "flat"
[[part]]
id = "post"
wood = "oak"
length = 800
width = 60
thickness = 60
grain = "z"
face = "y"
at = [500, 500, 0]
[[part]]
id = "brace"
wood = "oak"
length = 400
width = 40
thickness = 30
grain = "x"
face = "y"
)" + brace +
           joint;
}

Piece read(const std::string& text)
{
    const DesignRead result = read_design(text, shared_facts());
    for (const Fault& f : result.faults) UNSCOPED_INFO(f.says);
    REQUIRE(result.piece);
    return *result.piece;
}

} // namespace

TEST_CASE("A turn is right-handed about the middle of the box, or a given point", "[turn]")
{
    const Piece piece = read(design("at = [700, 515, 300]\nturn = { about = \"y\", degrees = 90 }\n"));
    const Box b = bounds_of(piece.parts[1], piece.copies[1]);
    // 400 long and 40 high about its middle (900, 530, 320): stands upright now.
    CHECK_THAT(b.lo[0], WithinAbs(0.880, 1e-9));
    CHECK_THAT(b.hi[0], WithinAbs(0.920, 1e-9));
    CHECK_THAT(b.lo[2], WithinAbs(0.120, 1e-9));
    CHECK_THAT(b.hi[2], WithinAbs(0.520, 1e-9));
    // Right-handed about y: z turns to x, x to −z.
    const PartAxes axes = axes_of(piece.parts[1], piece.copies[1]);
    CHECK_THAT(axes.grain[2], WithinAbs(-1, 1e-12));

    const Piece about_corner =
        read(design("at = [700, 515, 300]\nturn = { about = \"z\", degrees = 90, at = [700, 515, 300] }\n"));
    const Box c = bounds_of(about_corner.parts[1], about_corner.copies[1]);
    CHECK_THAT(c.lo[0], WithinAbs(0.670, 1e-9));
    CHECK_THAT(c.hi[1], WithinAbs(0.915, 1e-9));
}

TEST_CASE("A mirrored copy turns the other way", "[turn]")
{
    const Piece piece = read(design("at = [600, 515, 300]\nturn = { about = \"y\", degrees = 30 }\nmirror = [\"x\"]\n"));
    const Box a = bounds_of(piece.parts[1], piece.copies[1]), b = bounds_of(piece.parts[1], piece.copies[2]);
    CHECK_THAT(a.lo[0] + b.hi[0], WithinAbs(2.0, 1e-9));
    const PartAxes one = axes_of(piece.parts[1], piece.copies[1]), other = axes_of(piece.parts[1], piece.copies[2]);
    CHECK_THAT(one.grain[2], WithinAbs(-other.grain[2], 1e-12));
}

TEST_CASE("A brace at 45 degrees drawn into a post is cut to fit it", "[turn][contact]")
{
    // The brace runs up to the right; its lower end lies inside the post.
    const std::string joint = "[[joint]]\nbetween = [\"brace\", \"post\"]\nkind = \"butt\"\nglue = \"PVA\"\n";
    const Piece piece = read(design("at = [460, 515, 300]\nturn = { about = \"y\", degrees = -45 }\n", joint));
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.faults.empty());
    REQUIRE(found.contacts.size() == 1);
    const Contact& c = found.contacts[0];
    // It meets the right face of the post on its slanting section: 30 mm by 40 mm over cos 45 degrees.
    CHECK_THAT(c.patches[0].area, WithinRel(0.030 * 0.040 * std::sqrt(2.0), 1e-6));
    CHECK_THAT(c.patches[0].normal[0], WithinAbs(-1, 1e-9));
    // End grain begins at 45 degrees to the normal: both sides of the border are possible here, so only the post's side is sure.
    CHECK_FALSE(c.patches[0].end_grain_second);
}

TEST_CASE("A strip lying askew on a post's face shows the angle between the grains", "[turn][contact]")
{
    const Piece piece = read(design("at = [330, 470, 400]\nturn = { about = \"y\", degrees = 60 }\n"));
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.contacts.size() == 1);
    REQUIRE(found.contacts[0].grain_angle());
    CHECK_THAT(*found.contacts[0].grain_angle() * 180 / 3.14159265358979, WithinAbs(30, 1e-6));
    // 60 mm across the post: a slanting band of the strip's width.
    CHECK_THAT(found.contacts[0].area(), WithinRel(0.060 * 0.040 / std::cos(60 * 3.14159265358979 / 180), 1e-6));
}

TEST_CASE("A full turn changes nothing", "[turn][identity]")
{
    const Piece plain = read(design("at = [560, 515, 300]\n")),
                turned = read(design("at = [560, 515, 300]\nturn = { about = \"y\", degrees = 360 }\n"));
    REQUIRE(find_contacts(plain).contacts.size() == 1);
    REQUIRE(find_contacts(turned).contacts.size() == 1);
    CHECK_THAT(find_contacts(plain).contacts[0].area(), WithinRel(find_contacts(turned).contacts[0].area(), 1e-9));
}

TEST_CASE("What a turn lacks or has too much is told", "[turn][errors]")
{
    const auto fault = [](const std::string& turn) {
        const DesignRead result = read_design(design("at = [700, 515, 300]\n" + turn), shared_facts());
        REQUIRE_FALSE(result.faults.empty());
        return result.faults.front().id;
    };
    CHECK(fault("turn = { degrees = 8 }\n") == "missing-key");
    CHECK(fault("turn = { about = \"q\", degrees = 8 }\n") == "unknown-name");
    CHECK(fault("turn = { about = \"x\", degrees = 800 }\n") == "out-of-range");
    CHECK(fault("turn = { about = \"x\", degrees = 8, angle = 3 }\n") == "unknown-key");
}
