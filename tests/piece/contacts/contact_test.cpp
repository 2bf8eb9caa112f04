#include "catch.hpp"

#include "piece/contacts/contact.hpp"

#include <algorithm>
#include <cmath>

using namespace jointwright;

namespace {

Part board(const std::string& id, double length, double width, double thickness, Axis grain, Axis face)
{
    Part part;
    part.id = id;
    part.length = metres(length);
    part.width = metres(width);
    part.thickness = metres(thickness);
    part.grain = grain;
    part.face = face;
    part.rings = {degrees(0)};
    return part;
}

/// Adds a part and one copy of it with its lower corner there.
std::size_t put(Piece& piece, const Part& part, Point lo)
{
    Copy copy;
    copy.part = piece.parts.size();
    copy.box.lo = lo;
    copy.box.hi = lo;
    copy.box.hi[index_of(part.grain)] += in_metres(part.length);
    copy.box.hi[index_of(part.face)] += in_metres(part.thickness);
    copy.box.hi[index_of(part.width_axis())] += in_metres(part.width);
    piece.parts.push_back(part);
    piece.copies.push_back(copy);
    return piece.copies.size() - 1;
}

Joint joint(const std::string& first, const std::string& second, JointKind kind)
{
    Joint j;
    j.first = first;
    j.second = second;
    j.kind = kind;
    j.glue = "PVA";
    return j;
}

/// A slat across a rail: the slat 60 wide along x, the rail 22 thick along y; the slat drawn `sunk` into the rail.
Piece slat_on_rail(double sunk)
{
    Piece piece;
    put(piece, board("rail", 1.0, 0.080, 0.022, Axis::x, Axis::y), {0, 0.1, 0.3});
    put(piece, board("slat", 0.4, 0.060, 0.019, Axis::y, Axis::z), {0.5, 0, 0.38 - sunk});
    return piece;
}

double degrees_of(const std::optional<double>& angle) { return angle ? *angle * 57.29577951308232 : -1; }

} // namespace

TEST_CASE("A slat lying on a rail touches over its width and the rail's thickness, grains crossed", "[contact]")
{
    Piece piece = slat_on_rail(0);
    piece.joints = {joint("slat", "rail", JointKind::face)};
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.faults.empty());
    REQUIRE(found.contacts.size() == 1);
    const Contact& c = found.contacts[0];
    CHECK(piece.part_of(c.first).id == "slat");
    CHECK_THAT(c.area(), WithinRel(0.060 * 0.022, 1e-9));
    CHECK_THAT(degrees_of(c.grain_angle()), WithinAbs(90, 1e-6));
    CHECK_FALSE(c.patches[0].end_grain_first);
}

TEST_CASE("Without a stated joint the contact is dry", "[contact]")
{
    const ContactSearch found = find_contacts(slat_on_rail(0));
    REQUIRE(found.contacts.size() == 1);
    CHECK_FALSE(found.contacts[0].joint);
}

TEST_CASE("A slat let into a rail touches with its bottom and both edges", "[contact]")
{
    Piece piece = slat_on_rail(0.008);
    piece.joints = {joint("slat", "rail", JointKind::housing)};
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.faults.empty());
    REQUIRE(found.contacts.size() == 1);
    const Contact& c = found.contacts[0];
    CHECK(c.patches.size() == 3);
    CHECK_THAT(c.area(), WithinRel(0.060 * 0.022 + 2 * 0.008 * 0.022, 1e-9));
    CHECK_THAT(c.shared_volume, WithinRel(0.060 * 0.022 * 0.008, 1e-9));
    CHECK_THAT(degrees_of(c.grain_angle()), WithinAbs(90, 1e-6));
    // The edges of the slat press on the end grain of the rail's teeth.
    CHECK(c.patches[1].end_grain_second);
}

TEST_CASE("A round-over lessens the contact", "[contact]")
{
    Piece piece = slat_on_rail(0.008);
    piece.parts[1].round_over = millimetres(3);
    piece.joints = {joint("slat", "rail", JointKind::housing)};
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.contacts.size() == 1);
    CHECK_THAT(found.contacts[0].area(), WithinRel(0.054 * 0.022 + 2 * 0.005 * 0.022, 1e-9));
}

TEST_CASE("Sharing space without a joint is an error that says by how much and along which axis", "[contact][errors]")
{
    const ContactSearch found = find_contacts(slat_on_rail(0.008));
    REQUIRE(found.faults.size() == 1);
    CHECK(found.faults[0].id == "parts-overlap");
    CHECK_THAT(found.faults[0].says, ContainsSubstring("8 mm along z"));
    CHECK_THAT(found.faults[0].says, ContainsSubstring("slat #1"));
}

TEST_CASE("A joint whose parts stand apart is an error", "[contact][errors]")
{
    Piece piece = slat_on_rail(-0.0005);
    piece.joints = {joint("slat", "rail", JointKind::face)};
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.faults.size() == 1);
    CHECK(found.faults[0].id == "joint-apart");
    CHECK_THAT(found.faults[0].says, ContainsSubstring("0.5 mm apart along z"));
}

TEST_CASE("Within a tenth of a millimetre faces touch; edges and corners alone do not", "[contact]")
{
    CHECK(find_contacts(slat_on_rail(-0.00009)).contacts.size() == 1);
    CHECK(find_contacts(slat_on_rail(-0.00011)).contacts.empty());
    Piece corner;
    put(corner, board("a", 0.1, 0.1, 0.1, Axis::x, Axis::y), {0, 0, 0});
    put(corner, board("b", 0.1, 0.1, 0.1, Axis::x, Axis::y), {0.1, 0.1, 0});
    CHECK(find_contacts(corner).contacts.empty());
}

TEST_CASE("A strip glued along a rail has its grain parallel", "[contact]")
{
    Piece piece;
    put(piece, board("panel", 0.8, 0.3, 0.02, Axis::x, Axis::z), {0, 0, 0});
    put(piece, board("lipping", 0.8, 0.02, 0.012, Axis::x, Axis::y), {0, 0.3, 0});
    piece.joints = {joint("lipping", "panel", JointKind::edge)};
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.contacts.size() == 1);
    CHECK_THAT(found.contacts[0].area(), WithinRel(0.8 * 0.02, 1e-9));
    CHECK_THAT(degrees_of(found.contacts[0].grain_angle()), WithinAbs(0, 1e-6));
}

TEST_CASE("A rail tenoned into a leg has cheeks with grains crossed and a shoulder of end grain", "[contact]")
{
    Piece piece;
    put(piece, board("leg", 0.4, 0.045, 0.045, Axis::z, Axis::y), {0, 0, 0});
    put(piece, board("rail", 0.6, 0.070, 0.022, Axis::x, Axis::y), {0.045, 0.01, 0.3});
    Joint j = joint("rail", "leg", JointKind::tenon);
    j.tenon = Joint::Tenon{millimetres(25), millimetres(50), millimetres(8)};
    piece.joints = {j};
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.faults.empty());
    REQUIRE(found.contacts.size() == 1);
    const Contact& c = found.contacts[0];
    double cheeks = 0, shoulder = 0;
    for (const Patch& p : c.patches) {
        if (p.role == Patch::Role::cheek) cheeks += p.area;
        if (p.role == Patch::Role::shoulder) shoulder += p.area;
        if (p.role == Patch::Role::cheek) CHECK_THAT(degrees_of(p.grain_angle), WithinAbs(90, 1e-6));
        if (p.role == Patch::Role::shoulder) CHECK(p.end_grain_first);
    }
    CHECK_THAT(cheeks, WithinRel(2 * 0.025 * 0.050, 1e-9));
    CHECK_THAT(shoulder, WithinRel(0.070 * 0.022 - 0.050 * 0.008, 1e-9));

    SECTION("drawn into the leg the shared depth is the tenon's length")
    {
        Piece drawn = piece;
        drawn.copies[1].box.lo[0] = 0.020;
        drawn.parts[1].length = metres(0.645 - 0.020);
        const ContactSearch again = find_contacts(drawn);
        REQUIRE(again.faults.empty());
        REQUIRE(again.contacts.size() == 1);
        double sum = 0;
        for (const Patch& p : again.contacts[0].patches) sum += p.role == Patch::Role::cheek ? p.area : 0;
        CHECK_THAT(sum, WithinRel(2 * 0.025 * 0.050, 1e-9));
    }
}

TEST_CASE("A part resting in a notch of another touches its bottom and walls", "[contact]")
{
    Piece piece = slat_on_rail(0.010);
    Notches notch;
    notch.from = Side::top;
    notch.depth = millimetres(10);
    notch.width = millimetres(60);
    notch.first = millimetres(500);
    notch.count = 1;
    piece.parts[0].notches = {notch};
    piece.joints = {joint("slat", "rail", JointKind::housing)};
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.faults.empty());
    REQUIRE(found.contacts.size() == 1);
    CHECK_FALSE(found.contacts[0].shared);
    CHECK_THAT(found.contacts[0].area(), WithinRel(0.060 * 0.022 + 2 * 0.010 * 0.022, 1e-9));
}

TEST_CASE("A tapered leg touches only where its sides are still straight", "[contact]")
{
    Piece piece;
    Part leg = board("leg", 0.4, 0.050, 0.050, Axis::z, Axis::y);
    leg.taper = Taper{Side::bottom, millimetres(30), millimetres(30), metres(0.3), {Side::left}};
    put(piece, leg, {0, 0, 0});
    put(piece, board("cheek", 0.4, 0.050, 0.010, Axis::z, Axis::x), {0.050, 0, 0});  // on the tapered right side
    put(piece, board("other", 0.4, 0.050, 0.010, Axis::z, Axis::x), {-0.010, 0, 0}); // on the straight left side
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.contacts.size() == 2);
    double on_taper = 0, on_flat = 0;
    for (const Contact& c : found.contacts) (piece.part_of(c.second).id == "cheek" ? on_taper : on_flat) = c.area();
    CHECK_THAT(on_taper, WithinRel(0.1 * 0.050, 1e-9));
    // The left side stays flat but narrows from 50 to 30 mm towards the foot, evenly from front and back.
    CHECK_THAT(on_flat, WithinRel(0.1 * 0.050 + 0.3 * 0.040, 1e-9));
}

TEST_CASE("A half lap meets at half the shared depth with grains crossed", "[contact]")
{
    Piece piece;
    put(piece, board("one", 0.3, 0.050, 0.022, Axis::x, Axis::z), {0, 0.1, 0});
    put(piece, board("two", 0.3, 0.050, 0.022, Axis::y, Axis::z), {0.1, 0, 0});
    piece.joints = {joint("one", "two", JointKind::lap)};
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.faults.empty());
    REQUIRE(found.contacts.size() == 1);
    CHECK_THAT(found.contacts[0].patches[0].area, WithinRel(0.05 * 0.05, 1e-9));
    CHECK_THAT(degrees_of(found.contacts[0].grain_angle()), WithinAbs(90, 1e-6));
    CHECK_THAT(found.contacts[0].patches[0].bounds.lo[2], WithinAbs(0.011, 1e-9));
}

TEST_CASE("A mitre is cut along the diagonal of the corner", "[contact]")
{
    Piece piece;
    put(piece, board("a", 0.3, 0.040, 0.020, Axis::x, Axis::z), {0, 0, 0});
    put(piece, board("b", 0.3, 0.040, 0.020, Axis::y, Axis::z), {0, 0, 0});
    piece.joints = {joint("a", "b", JointKind::mitre)};
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.faults.empty());
    REQUIRE(found.contacts.size() == 1);
    CHECK_THAT(found.contacts[0].area(), WithinRel(0.040 * std::sqrt(2.0) * 0.020, 1e-9));
}

TEST_CASE("Two joints at one pair are refused", "[contact][errors]")
{
    Piece piece = slat_on_rail(0);
    piece.joints = {joint("slat", "rail", JointKind::face), joint("rail", "slat", JointKind::screws)};
    const ContactSearch found = find_contacts(piece);
    REQUIRE(found.faults.size() == 1);
    CHECK(found.faults[0].id == "joined-twice");
}

TEST_CASE("Splitting a contact changes no total", "[contact][identity]")
{
    Piece whole = slat_on_rail(0);
    Piece split;
    put(split, board("rail", 0.53, 0.080, 0.022, Axis::x, Axis::y), {0, 0.1, 0.3});
    put(split, board("slat", 0.4, 0.060, 0.019, Axis::y, Axis::z), {0.5, 0, 0.38});
    put(split, board("rail two", 0.47, 0.080, 0.022, Axis::x, Axis::y), {0.53, 0.1, 0.3});
    double a = 0, b = 0;
    for (const Contact& c : find_contacts(whole).contacts) a += c.area();
    for (const Contact& c : find_contacts(split).contacts)
        if (split.part_of(c.first).id == "slat" || split.part_of(c.second).id == "slat") b += c.area();
    CHECK_THAT(a, WithinRel(b, 1e-9));
}

TEST_CASE("Turning or mirroring the piece changes no contact", "[contact][identity]")
{
    const auto turned = [](Piece piece, int how) {
        for (Part& part : piece.parts) {
            const auto turn = [&](Axis a) { return how == 1 ? (a == Axis::x ? Axis::y : a == Axis::y ? Axis::x : a) : a; };
            part.grain = turn(part.grain);
            part.face = turn(part.face);
        }
        for (Copy& copy : piece.copies) {
            Box box = copy.box;
            if (how == 1) { // a quarter turn: x to y, y to −x
                copy.box.lo = {-box.hi[1], box.lo[0], box.lo[2]};
                copy.box.hi = {-box.lo[1], box.hi[0], box.hi[2]};
            } else { // mirrored in x
                copy.box.lo[0] = -box.hi[0];
                copy.box.hi[0] = -box.lo[0];
                copy.mirrored[0] = !copy.mirrored[0];
            }
        }
        return piece;
    };
    Piece piece = slat_on_rail(0.006);
    piece.joints = {joint("slat", "rail", JointKind::housing)};
    const double area = find_contacts(piece).contacts.at(0).area();
    for (const int how : {1, 2}) {
        CAPTURE(how);
        const ContactSearch found = find_contacts(turned(piece, how));
        REQUIRE(found.contacts.size() == 1);
        CHECK_THAT(found.contacts[0].area(), WithinRel(area, 1e-9));
        CHECK_THAT(degrees_of(found.contacts[0].grain_angle()), WithinAbs(90, 1e-6));
    }
}
