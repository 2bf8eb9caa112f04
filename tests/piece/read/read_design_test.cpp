// What a design says arrives in the piece, with the defaults of the format.

#include "catch.hpp"

#include "piece/tiny_design.hpp"

#include <algorithm>

using namespace jointwright;

namespace {

bool says(const std::vector<std::string>& sentences, const std::string& words)
{
    return std::any_of(sentences.begin(), sentences.end(),
                       [&](const std::string& s) { return s.find(words) != std::string::npos; });
}

} // namespace

TEST_CASE("Defaults of the tiny design", "[read]")
{
    const Piece piece = tiny::piece(tiny::design());
    CHECK(piece.name == "Tiny");
    CHECK(piece.use == Use::none);
    CHECK(piece.room.name == "heated, cold winters");
    CHECK(piece.room.at_glue_up == MoistureContent::percent(8));
    CHECK(piece.room.shop == Temperature::celsius(20));
    REQUIRE(piece.woods.size() == 1);
    CHECK(piece.woods[0].species == std::vector<std::string>{"white oak"});
    CHECK_FALSE(piece.woods[0].rings_stated);
    REQUIRE(piece.parts.size() == 2);
    REQUIRE(piece.parts[0].rings.size() == 1);
    CHECK(in_degrees(piece.parts[0].rings[0]) == 0);
    CHECK_FALSE(piece.parts[0].finish);
    REQUIRE(piece.joints.size() == 1);
    CHECK_FALSE(piece.joints[0].glue);
    CHECK(piece.limits.level == ProofLevel::home);
    CHECK(says(piece.assumed, "Rings of \"oak\" are not stated"));
    CHECK(piece.unused.empty());
}

TEST_CASE("A part has the rings, finish and moisture of its wood unless it states its own", "[read]")
{
    const Piece piece =
        tiny::piece(tiny::design({{"\"white oak\"", "[\"hard maple\", \"sugar maple\", \"red maple\"]\nrings = [\"flat\", "
                                                    "30]\nfinish = \"Urethane varnish, 2 coats\"\nmoisture = 7"},
                                  {"face = \"y\"", "face = \"y\"\nrings = \"quarter\"\nfinish = \"bare\"\nmoisture = 9.5"}}));
    CHECK(piece.woods[0].species == std::vector<std::string>{"sugar maple", "red maple"});
    const Part& board = piece.parts[0];
    REQUIRE(board.rings.size() == 2);
    CHECK_THAT(in_degrees(board.rings[1]), WithinAbs(30, 1e-9));
    CHECK_FALSE(board.own_rings);
    REQUIRE(board.finish);
    CHECK((board.finish->name == "urethane varnish" && board.finish->coats == 2));
    CHECK(board.moisture == MoistureContent::percent(7));
    const Part& post = piece.parts[1];
    CHECK(post.own_rings);
    CHECK_THAT(in_degrees(post.rings.at(0)), WithinAbs(90, 1e-9));
    CHECK_FALSE(post.finish);
    CHECK(post.moisture == MoistureContent::percent(9.5));
    CHECK_FALSE(says(piece.assumed, "Rings"));
}

TEST_CASE("Own test values stand in for a species", "[read]")
{
    const Piece piece = tiny::piece(
        tiny::design({{"species = \"white oak\"",
                       "properties = { modulus = \"12.5 GPa\", shear_modulus = \"0.78 GPa\", density = \"680 kg/m3\", "
                       "bending_strength = \"95 MPa\", "
                       "shear_strength = \"12 MPa\", tension_across = \"5 MPa\", tangential = 0.0035, radial = 0.0017 }"}}));
    const WoodChoice& wood = piece.woods[0];
    CHECK(wood.species.empty());
    CHECK_THAT(wood.own_strength.modulus->value(), WithinRel(12.5e9, 1e-12));
    CHECK_THAT(wood.own_strength.shear_modulus->value(), WithinRel(0.78e9, 1e-12));
    CHECK_THAT(wood.own_strength.density->value(), WithinRel(680.0, 1e-12));
    CHECK_THAT(wood.own_strength.tension_across->value(), WithinRel(5e6, 1e-12));
    CHECK(wood.own_movement.tangential->per_point() == 0.0035);
    CHECK(wood.own_movement.radial->per_point() == 0.0017);
}

TEST_CASE("The room may be given by its air or by what wood settles at", "[read]")
{
    const Piece piece = tiny::piece(tiny::design(
        {{"air = \"heated, cold winters\"",
          "driest = { humidity = 30, temperature = \"68 F\" }\ndampest = { moisture = 12 }\nshop_temperature = \"18 C\""}}));
    CHECK_FALSE(piece.room.name);
    const auto& air = std::get<AirState>(piece.room.driest);
    CHECK(air.humidity.percent() == 30);
    CHECK_THAT(air.temperature.celsius(), WithinAbs(20, 1e-9));
    CHECK(std::get<MoistureContent>(piece.room.dampest).percent() == 12);
    CHECK(piece.room.shop_stated);
    CHECK_FALSE(says(piece.unused, "shop_temperature"));
}

TEST_CASE("The shape of a part", "[read]")
{
    const Piece piece = tiny::piece(tiny::design(
        {{"at = [0, 0, 0]", "at = [0, 0, 0]\nround_over = 2\nglued_up = { boards = 3, glue = \"white glue\" }\nbare = "
                            "[\"bottom\"]\nbark_side = \"top\"\nring_radius = 90\n"
                            "notches = [{ from = \"top\", depth = 5, width = 10, first = 50, step = 30, count = 4 }]"},
         {"at = [0, 0, 20]", "at = [0, 0, 20]\ntaper = { end = \"top\", width = 30, thickness = 25, flat = [\"left\"] }"}}));
    const Part& board = piece.parts[0];
    CHECK_THAT(in_millimetres(*board.round_over), WithinAbs(2, 1e-9));
    CHECK(board.glued_up->boards == 3);
    CHECK(board.glued_up->glue == "PVA");
    CHECK(board.bare == std::vector<Side>{Side::bottom});
    CHECK(board.bark_side == Side::top);
    REQUIRE(board.notches.size() == 1);
    CHECK(board.notches[0].count == 4);
    CHECK_THAT(in_millimetres(board.notches[0].step), WithinAbs(30, 1e-9));
    const Taper& taper = *piece.parts[1].taper;
    CHECK(taper.end == Side::top);
    CHECK_THAT(in_millimetres(taper.over), WithinAbs(300, 1e-9)); // its whole length
    CHECK(taper.flat == std::vector<Side>{Side::left});
    CHECK_THAT(in_millimetres(*board.ring_radius), WithinAbs(90, 1e-9));
    CHECK_FALSE(says(piece.unused, "bark_side"));
    CHECK_FALSE(says(piece.unused, "ring_radius"));
}

TEST_CASE("Joints and their sizes by kind", "[read]")
{
    struct Row {
        std::string_view kind, sizes;
        bool (*arrived)(const Joint&);
    };
    const Row rows[] = {
        {"screws", "screws = { diameter = 5, length = 40, count = 3, slot = 4, inset = 20 }",
         [](const Joint& j) { return j.screws && j.screws->count == 3 && j.screws->slot && j.screws->inset; }},
        {"buttons", "buttons = { count = 4, slot = 10 }", [](const Joint& j) { return j.buttons && j.buttons->count == 4; }},
        {"dowel", "glue = \"PVA\"\ndowels = { diameter = 8, length = 30, count = 2 }",
         [](const Joint& j) { return j.dowels && j.dowels->count == 2 && j.glue == "PVA"; }},
        {"tenon", "tenon = { length = 10, width = 20, thickness = 8 }\npegs = { diameter = 6, count = 1 }",
         [](const Joint& j) { return j.tenon && j.pegs; }},
        {"face", "glue = \"PVA\"\nglued = { length = 20, at = \"left\" }\nclearance = 0.1",
         [](const Joint& j) { return j.glued && j.glued->at == GluedAt::left && j.clearance.value() > 0; }},
    };
    for (const Row& row : rows) {
        CAPTURE(row.kind);
        const std::string kind = "kind = \"" + std::string(row.kind) + "\"\n" + std::string(row.sizes);
        const Joint joint = tiny::piece(tiny::design({{"kind = \"butt\"", kind}})).joints.at(0);
        CHECK(name_of(joint.kind) == row.kind);
        CHECK(row.arrived(joint));
    }
    // Sharing space: the post stands 5 mm deep in the board.
    const Row sharing[] = {
        {"groove", "groove = { depth = 8 }",
         [](const Joint& j) { return j.groove_depth && in_metres(*j.groove_depth) == 0.008; }},
        {"lap", "lap = { first = 4 }", [](const Joint& j) { return j.lap_first.has_value(); }},
        {"bridle", "bridle = { thickness = 9 }", [](const Joint& j) { return j.bridle_thickness.has_value(); }},
        {"dovetail", "dovetail = { tails = 3 }",
         [](const Joint& j) { return j.dovetail && j.dovetail->tails == 3 && j.dovetail->slope == 8; }},
        {"sliding dovetail", "clearance = 0.1", [](const Joint& j) { return j.kind == JointKind::sliding_dovetail; }},
    };
    for (const Row& row : sharing) {
        CAPTURE(row.kind);
        const std::string kind = "kind = \"" + std::string(row.kind) + "\"\n" + std::string(row.sizes);
        const Joint joint =
            tiny::piece(tiny::design({{"kind = \"butt\"", kind}, {"at = [0, 0, 20]", "at = [0, 0, 15]"}})).joints.at(0);
        CHECK(row.arrived(joint));
    }
}

TEST_CASE("Limits", "[read]")
{
    const std::string text = tiny::design() +
                             "[limits]\nsag = \"span/300\"\ngap_min = \"1/16 in\"\ngap_max = 12\nsitter = \"110 kg\"\nseats = 2\n"
                             "level = \"contract\"\nshelf_load = \"25 lbf/ft\"\nrelaxation = 0.5\n";
    const Limits limits = tiny::piece(text).limits;
    CHECK(limits.sag->span_over == 300);
    CHECK_THAT(in_millimetres(*limits.gap_min), WithinAbs(25.4 / 16, 1e-9));
    CHECK_THAT(limits.sitter->value(), WithinAbs(110, 1e-9));
    CHECK(limits.seats == 2);
    CHECK(limits.level == ProofLevel::contract);
    CHECK_THAT(limits.shelf_load->value(), WithinRel(25 * 4.4482216152605 / 0.3048, 1e-9));
    CHECK(limits.relaxation == 0.5);
    CHECK_THAT(in_millimetres(*tiny::piece(tiny::design() + "[limits]\nsag = 3\n").limits.sag->length), WithinAbs(3, 1e-9));
}

TEST_CASE("Tables may be written on one line or with dots", "[read]")
{
    const Piece piece = tiny::piece(tiny::design({{"at = [0, 0, 0]", "at.left = 0\nat.front = 0\nat.bottom = 0"}}));
    CHECK(piece.copies[0].box.lo == Point{0, 0, 0});
}
