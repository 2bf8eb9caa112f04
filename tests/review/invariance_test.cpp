// Turning, mirroring or shifting a piece, splitting a contact, halving a load: none of it changes a verdict.

#include "catch.hpp"
#include "checks/trestle.hpp"
#include "report/json/json.hpp"

#include <map>
#include <set>
#include <tuple>

using namespace checked;

namespace {

/// A stool of unlike corners: tapered and notched parts, a lap, mitres, glue at one side only, loads off the middle.
constexpr const char* kCrooked = R"(
[piece]
name = "Crooked stool"
units = "mm"
use = "seat"
carries = ["slat"]
size = [520, 360, 470]
[room]
air = "heated, cold winters"
moisture_at_glue_up = 9
[[wood]]
id = "oak"
species = ["red oak", "white oak"]
rings = "rift"
[[wood]]
id = "pine"
species = "eastern white pine"
[[part]]
id = "leg"
wood = "oak"
length = 440
width = 50
thickness = 40
grain = "z"
face = "y"
at = [0, 0, 0]
mirror = ["x", "y"]
taper = { end = "bottom", width = 36, thickness = 30, over = 300, flat = ["left", "front"] }
[[part]]
id = "long rail"
wood = "oak"
length = 420
width = 70
thickness = 22
grain = "x"
face = "y"
at = { left = 50, front = 10, top = 440 }
mirror = ["y"]
notches = [ { from = "bottom", depth = 8, width = 30, first = 60, step = 70, count = 2 } ]
[[part]]
id = "end rail"
wood = "oak"
length = 280
width = 70
thickness = 22
grain = "y"
face = "x"
at = { left = 12, front = 40, top = 440 }
mirror = ["x"]
[[part]]
id = "slat"
wood = "pine"
length = 360
width = 60
thickness = 30
grain = "y"
face = "z"
at = [20, 0, 440]
repeat = { count = 7, along = "x", gap = 8 }
[[joint]]
between = ["long rail", "leg"]
kind = "tenon"
glue = "PVA"
tenon = { length = 30, width = 50, thickness = 8 }
[[joint]]
between = ["end rail", "leg"]
kind = "tenon"
glue = "PVA"
tenon = { length = 24, width = 50, thickness = 8 }
[[joint]]
between = ["slat", "long rail"]
kind = "face"
glue = "PVA"
glued = { length = 30, at = "left" }
[[load]]
name = "crate"
on = "slat"
force = "150 N"
patch = [120, 90]
at = [150, 120]
lasting = true
[[load]]
name = "pot"
on = "slat"
force = "90 N"
patch = [60, 60]
at = [330, 250]
)";

/// A tray: mitred rim, a lap across it, a panel in a groove.
constexpr const char* kTray = R"(
[piece]
name = "Tray"
units = "cm"
use = "none"
[room]
air = "heated, mild winters"
moisture_at_glue_up = 8
[[wood]]
id = "walnut"
species = "black walnut"
rings = ["flat", "quarter"]
[[part]]
id = "long side"
wood = "walnut"
length = 40
width = 5
thickness = 1.2
grain = "x"
face = "y"
at = [0, 0, 0]
copies = [ { at = [0, 28.8, 0] } ]
[[part]]
id = "short side"
wood = "walnut"
length = 30
width = 5
thickness = 1.2
grain = "y"
face = "x"
at = [0, 0, 0]
copies = [ { at = [38.8, 0, 0] } ]
[[part]]
id = "bottom"
wood = "walnut"
length = 38.6
width = 28.6
thickness = 0.8
grain = "x"
face = "z"
at = [0.7, 0.7, 1]
[[part]]
id = "stick"
wood = "walnut"
length = 27.6
width = 2
thickness = 1.6
grain = "y"
face = "z"
at = [9, 1.2, 1.8]
[[part]]
id = "stay"
wood = "walnut"
length = 37.6
width = 2
thickness = 1.6
grain = "x"
face = "z"
at = [1.2, 8, 1.8]
[[joint]]
between = ["long side", "short side"]
kind = "mitre"
glue = "hide glue"
[[joint]]
between = ["bottom", "long side"]
kind = "groove"
[[joint]]
between = ["bottom", "short side"]
kind = "groove"
[[joint]]
between = ["stick", "stay"]
kind = "lap"
glue = "hide glue"
lap = { first = 0.6 }
[[joint]]
between = ["stick", "long side"]
kind = "butt"
glue = "hide glue"
[[load]]
name = "cups"
on = "bottom"
force = "40 N"
patch = [10, 8]
at = [28, 20]
lasting = true
)";

// ---- moving a whole piece

/// What is done to the axes of a piece: where each old axis goes, and whether it is reversed.
struct Move {
    std::array<std::size_t, 3> to{0, 1, 2};
    std::array<bool, 3> reversed{}; ///< by old axis
    Point shift{};                  ///< by new axis
    Axis axis(Axis old) const { return static_cast<Axis>(to[index_of(old)]); }
    Side side(Side old) const
    {
        const Axis from = axis_of(old);
        const bool far = is_far(old) != reversed[index_of(from)];
        constexpr Side near_sides[] = {Side::left, Side::front, Side::bottom}, far_sides[] = {Side::right, Side::back, Side::top};
        return (far ? far_sides : near_sides)[to[index_of(from)]];
    }
    Point point(const Point& old) const
    {
        Point moved{};
        for (std::size_t i = 0; i < 3; ++i) moved[to[i]] = (reversed[i] ? -old[i] : old[i]) + shift[to[i]];
        return moved;
    }
    Point direction(const Point& old) const
    {
        Point moved{};
        for (std::size_t i = 0; i < 3; ++i) moved[to[i]] = reversed[i] ? -old[i] : old[i];
        return moved;
    }
    Box box(const Box& old) const
    {
        Box moved{point(old.lo), point(old.hi)};
        for (std::size_t i = 0; i < 3; ++i)
            if (moved.lo[i] > moved.hi[i]) std::swap(moved.lo[i], moved.hi[i]);
        return moved;
    }
};

Move quarter_turn() { return {{1, 0, 2}, {false, true, false}, {}}; } // (x, y) to (−y, x)
Move mirror_x() { return {{0, 1, 2}, {true, false, false}, {}}; }
Move shifted(Point by) { return {{0, 1, 2}, {}, by}; }

GluedAt moved_end(const Move& move, GluedAt at)
{
    const std::map<GluedAt, Side> sides = {{GluedAt::left, Side::left},     {GluedAt::right, Side::right},
                                           {GluedAt::front, Side::front},   {GluedAt::back, Side::back},
                                           {GluedAt::bottom, Side::bottom}, {GluedAt::top, Side::top}};
    if (at == GluedAt::middle) return at;
    const Side side = move.side(sides.at(at));
    for (const auto& [end, of] : sides)
        if (of == side) return end;
    return at;
}

void move_shape(const Move& move, Part& part)
{
    const std::size_t grain = index_of(part.grain);
    for (Notches& row : part.notches) {
        row.from = move.side(row.from);
        // Places along the part are counted from its left, front or bottom end: reversed, the last notch becomes the first.
        if (move.reversed[grain]) row.first = part.length - row.first - row.width - row.step * static_cast<double>(row.count - 1);
    }
    if (part.taper) {
        part.taper->end = move.side(part.taper->end);
        for (Side& side : part.taper->flat) side = move.side(side);
    }
    for (Side& side : part.bare) side = move.side(side);
    if (part.bark_side) part.bark_side = move.side(*part.bark_side);
    part.grain = move.axis(part.grain);
    part.face = move.axis(part.face);
}

Piece moved(const Piece& old, const Move& move)
{
    Piece piece = old;
    for (Part& part : piece.parts) {
        REQUIRE_FALSE(part.turn);
        move_shape(move, part);
    }
    for (Copy& copy : piece.copies) {
        const auto mirrored = copy.mirrored;
        for (std::size_t i = 0; i < 3; ++i) copy.mirrored[move.to[i]] = mirrored[i];
        copy.box = move.box(copy.box);
    }
    if (piece.size)
        piece.size = Point{(*old.size)[move.to[0] == 0 ? 0 : 1], (*old.size)[move.to[0] == 0 ? 1 : 0], (*old.size)[2]};
    for (Joint& joint : piece.joints)
        if (joint.glued) joint.glued->at = moved_end(move, joint.glued->at);
    for (StatedLoad& load : piece.loads) {
        load.at = move.point(load.at);
        load.direction = move.direction(load.direction);
        if (load.patch && move.to[0] == 1) std::swap((*load.patch)[0], (*load.patch)[1]);
    }
    return piece;
}

// ---- comparing two reports

using Key = std::tuple<std::string, std::string>;

std::map<Key, const Finding*> by_key(const std::vector<Finding>& findings)
{
    std::map<Key, const Finding*> map;
    for (const Finding& f : findings) map[{f.check, f.subject}] = &f;
    return map;
}

void check_alike(const ReportContent& before, const ReportContent& after)
{
    CHECK(after.verdict == before.verdict);
    CHECK(after.findings.size() == before.findings.size());
    CHECK(after.contacts.size() == before.contacts.size());
    CHECK_THAT(after.mass_kg.value(), WithinRel(before.mass_kg.value(), 1e-9));
    const auto then = by_key(before.findings), now = by_key(after.findings);
    for (const auto& [key, f] : then) {
        CAPTURE(std::get<0>(key), std::get<1>(key), f->headline);
        const auto it = now.find(key);
        REQUIRE(it != now.end());
        CAPTURE(it->second->headline);
        CHECK(it->second->verdict == f->verdict);
        CHECK(it->second->utilisation.has_value() == f->utilisation.has_value());
        if (f->utilisation && it->second->utilisation)
            CHECK_THAT(*it->second->utilisation, WithinAbs(*f->utilisation, 1e-9 * std::max(1.0, *f->utilisation)));
    }
}

std::vector<std::pair<std::string, std::string>> designs()
{
    return {{"boot bench", built_in_design("boot-bench")},
            {"hall table", built_in_design("hall-table-glued-top")},
            {"window seat", built_in_design("window-seat-metric")},
            {"crooked stool", kCrooked},
            {"tray", kTray}};
}

} // namespace

TEST_CASE("Turning the piece about the vertical changes nothing", "[invariance][identity]")
{
    for (const auto& [name, text] : designs()) {
        CAPTURE(name);
        const Piece piece = piece_of(text);
        const ReportContent before = content_of(piece);
        Piece turned = piece;
        for (int quarter = 1; quarter <= 3; ++quarter) {
            CAPTURE(quarter);
            turned = moved(turned, quarter_turn());
            check_alike(before, content_of(turned));
        }
    }
}

TEST_CASE("Mirroring the piece changes nothing", "[invariance][identity]")
{
    for (const auto& [name, text] : designs()) {
        CAPTURE(name);
        const Piece piece = piece_of(text);
        const Piece mirrored = moved(piece, mirror_x());
        check_alike(content_of(piece), content_of(mirrored));
        // The same by flags: every copy mirrored in itself where it is mirrored as a whole.
        Piece by_flags = mirrored;
        by_flags.parts = piece.parts;
        for (Copy& copy : by_flags.copies) copy.mirrored[0] = !copy.mirrored[0];
        check_alike(content_of(piece), content_of(by_flags));
    }
}

TEST_CASE("Shifting the piece changes nothing", "[invariance][identity]")
{
    for (const auto& [name, text] : designs()) {
        CAPTURE(name);
        const Piece piece = piece_of(text);
        check_alike(content_of(piece), content_of(moved(piece, shifted({1, 2, 0}))));
        check_alike(content_of(piece), content_of(moved(piece, shifted({-3.7, 0.123, 0}))));
    }
}

TEST_CASE("A move that should matter does", "[invariance]")
{
    // The guard of the tests above: a crate that is moved alone, or a part alone, is seen.
    const Piece piece = piece_of(kCrooked);
    const ReportContent before = content_of(piece);
    Piece other = piece;
    other.loads[0].at[0] += 0.1;
    other.loads[0].force = newtons(2000);
    const double used = *finding_of(before.findings, "bending", "long rail").utilisation;
    CHECK(*finding_of(content_of(other).findings, "bending", "long rail").utilisation > used + 1e-3);
}

TEST_CASE("Written out copy by copy the piece has the same verdicts", "[invariance][identity]")
{
    for (const auto& [name, text] : designs()) {
        CAPTURE(name);
        const Piece piece = piece_of(text);
        check_alike(content_of(piece), content_of(expand_design(piece, text, testing::shared_facts())));
    }
}

TEST_CASE("Two half loads make one", "[invariance][identity]")
{
    for (const bool lasting : {true, false}) {
        CAPTURE(lasting);
        Trestle whole, halves;
        whole.more = point_load("300", "420", lasting);
        halves.more = point_load("150", "420", lasting) + point_load("150", "420", lasting);
        halves.more.replace(halves.more.rfind("\"weight\""), 8, "\"other half\"");
        const auto one = content_of(whole.text()).findings, two = content_of(halves.text()).findings;
        for (const char* check : {"bending", "shear", "sag"}) {
            CAPTURE(check);
            CHECK_THAT(*finding_of(two, check, "board").utilisation,
                       WithinRel(*finding_of(one, check, "board").utilisation, 1e-9));
        }
        CHECK_THAT(value_of(finding_of(two, "bending", "board"), "stress"),
                   WithinRel(value_of(finding_of(one, "bending", "board"), "stress"), 1e-9));
    }
}

TEST_CASE("Twice the load bends twice as much", "[invariance][identity]")
{
    const auto stress = [](const char* newtons) {
        Trestle t;
        t.more = point_load(newtons, "500"); // where its own weight bends most too
        return value_of(finding_of(content_of(t.text()).findings, "bending", "board"), "stress");
    };
    CHECK_THAT(stress("300") - stress("200"), WithinRel(stress("200") - stress("100"), 1e-5));
    CHECK_THAT(stress("300") - stress("100"), WithinRel(2 * (stress("200") - stress("100")), 1e-5));
}

TEST_CASE("Splitting what bears a part changes no total", "[invariance][identity]")
{
    // A board on a plinth 300 mm long, and on the same in two halves that touch.
    const std::string head = still_head(true) + R"(
[[wood]]
id = "oak"
species = "white oak"
[[part]]
id = "board"
wood = "oak"
length = 300
width = 100
thickness = 20
grain = "y"
face = "z"
at = [100, 0, 80]
[[load]]
name = "weight"
on = "board"
force = "500 N"
patch = [40, 200]
at = [150, 150]
lasting = true
)";
    const std::string one = R"(
[[part]]
id = "plinth"
wood = "oak"
length = 300
width = 80
thickness = 20
grain = "x"
face = "y"
at = [0, 20, 0]
copies = [ { at = [0, 260, 0] } ]
)";
    const std::string split = R"(
[[part]]
id = "plinth"
wood = "oak"
length = 150
width = 80
thickness = 20
grain = "x"
face = "y"
at = [0, 20, 0]
copies = [ { at = [150, 20, 0] }, { at = [0, 260, 0] }, { at = [150, 260, 0] } ]
)";
    const std::string glue = "[[joint]]\nbetween = [\"board\", \"plinth\"]\nkind = \"face\"\nglue = \"PVA\"\n";
    const auto whole = bench_of(head + one + glue), halves = bench_of(head + split + glue);
    const auto totals = [](const Bench& bench) {
        double force = 0, area = 0;
        for (const BearingForce& f : bench.prepared.statics.forces)
            if (f.load_case == 0 && f.upper == bench.copy("board #1")) force += f.force;
        for (const Contact& c : bench.layout.contacts)
            if (c.joint) area += c.area();
        return std::pair{force, area};
    };
    const auto [force_one, area_one] = totals(*whole);
    const auto [force_two, area_two] = totals(*halves);
    CHECK(force_one > 500);
    CHECK_THAT(force_two, WithinRel(force_one, 1e-9));
    CHECK_THAT(area_two, WithinRel(area_one, 1e-9));
    CHECK_THAT(halves->prepared.statics.on_floor[0], WithinRel(whole->prepared.statics.on_floor[0], 1e-9));
    CHECK_THAT(halves->prepared.whole_mass(), WithinRel(whole->prepared.whole_mass(), 1e-9));
}
