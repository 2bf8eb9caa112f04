#include "catch.hpp"

#include "piece/tiny_design.hpp"

using namespace jointwright;

namespace {

/// The tiny design with one loose board, 400 along x, 100 along y, 20 along z, placed as given.
Piece board(std::string_view placing, std::string_view size = "[500, 500, 500]")
{
    std::string text = tiny::design({{"at = [0, 0, 0]", placing}, {"[500, 500, 500]", size}});
    const std::size_t post = text.find("[[part]]\nid = \"post\"");
    return tiny::piece(text.substr(0, post));
}

void check_corner(const Piece& piece, std::size_t copy, double x, double y, double z)
{
    const Point& lo = piece.copies.at(copy).box.lo;
    CAPTURE(copy, lo[0], lo[1], lo[2]);
    CHECK_THAT(lo[0], WithinAbs(x / 1000, 1e-12));
    CHECK_THAT(lo[1], WithinAbs(y / 1000, 1e-12));
    CHECK_THAT(lo[2], WithinAbs(z / 1000, 1e-12));
}

} // namespace

TEST_CASE("The box of a part runs its length along the grain and its thickness along the face", "[placement]")
{
    const Piece piece = board("at = [10, 20, 30]");
    REQUIRE(piece.copies.size() == 1);
    check_corner(piece, 0, 10, 20, 30);
    CHECK_THAT(piece.copies[0].box.size(Axis::x), WithinAbs(0.4, 1e-12));
    CHECK_THAT(piece.copies[0].box.size(Axis::y), WithinAbs(0.1, 1e-12));
    CHECK_THAT(piece.copies[0].box.size(Axis::z), WithinAbs(0.02, 1e-12));
}

TEST_CASE("A side is the coordinate of that side, from the origin of the piece", "[placement]")
{
    check_corner(board("at = { right = 410, back = 120, top = 50 }"), 0, 10, 20, 30);
    check_corner(board("at = { left = \"1 cm\", front = 20, top = 50 }"), 0, 10, 20, 30);
}

TEST_CASE("A row starts with the placed one", "[placement]")
{
    const Piece gaps = board("at = [0, 0, 0]\nrepeat = { count = 3, along = \"z\", gap = 5 }");
    REQUIRE(gaps.copies.size() == 3);
    check_corner(gaps, 2, 0, 0, 50);
    const Piece to = board("at = [0, 0, 10]\nrepeat = { count = 4, along = \"z\", to = 120 }");
    REQUIRE(to.copies.size() == 4);
    check_corner(to, 1, 0, 0, 10 + 30);
    CHECK_THAT(to.copies[3].box.hi[2], WithinAbs(0.12, 1e-12));
    const Piece step = board("at = [0, 0, 0]\nrepeat = { count = 3, step = [10, 20, 30] }");
    check_corner(step, 2, 20, 40, 60);
}

TEST_CASE("Single copies follow the row, mirrors follow both, and numbers run through", "[placement]")
{
    const Piece piece = board("at = [0, 0, 0]\nrepeat = { count = 2, along = \"y\", gap = 20 }\n"
                              "copies = [{ at = [50, 0, 100], mirrored = [\"z\"] }]\nmirror = [\"x\", \"z\"]",
                              "[1000, 500, 500]");
    REQUIRE(piece.copies.size() == 12);
    for (std::size_t i = 0; i < 12; ++i) CHECK(piece.copies[i].number == static_cast<int>(i) + 1);
    check_corner(piece, 0, 0, 0, 0);
    check_corner(piece, 1, 0, 120, 0);
    check_corner(piece, 2, 50, 0, 100);
    check_corner(piece, 3, 600, 0, 0);   // in x: 1000 - 400
    check_corner(piece, 5, 550, 0, 100); // 1000 - 450
    check_corner(piece, 6, 0, 0, 480);   // in z: 500 - 20
    check_corner(piece, 9, 600, 0, 480); // in both
    check_corner(piece, 11, 550, 0, 380);
    CHECK(piece.copies[0].mirrored == std::array<bool, 3>{false, false, false});
    CHECK(piece.copies[2].mirrored == std::array<bool, 3>{false, false, true});
    CHECK(piece.copies[3].mirrored == std::array<bool, 3>{true, false, false});
    CHECK(piece.copies[9].mirrored == std::array<bool, 3>{true, false, true});
    CHECK(piece.copies[11].mirrored == std::array<bool, 3>{true, false, false}); // in z twice: as it was
}

TEST_CASE("Names mean all copies or one", "[placement]")
{
    const Piece piece = board("at = [0, 0, 0]\nrepeat = { count = 3, along = \"z\", gap = 5 }");
    CHECK(piece.copies_named("board") == std::vector<std::size_t>{0, 1, 2});
    CHECK(piece.copies_named("board #2") == std::vector<std::size_t>{1});
    CHECK(piece.copies_named("board #4").empty());
    CHECK(piece.copies_named("boar").empty());
    CHECK(piece.label(1) == "board #2");
    CHECK(piece.label(1, true) == "board #2");
    CHECK(board("at = [0, 0, 0]").label(0, true) == "board");
}

TEST_CASE("Lengths have the unit of the piece unless they bring their own", "[placement]")
{
    const auto length_of = [](std::string_view units, std::string_view length) {
        return in_metres(
            tiny::piece(tiny::design(
                            {{"\"mm\"", units}, {"length = 400", length}, {"[500, 500, 500]", "[\"19 m\", \"19 m\", \"19 m\"]"}}))
                .parts[0]
                .length);
    };
    CHECK_THAT(length_of("\"mm\"", "length = 400"), WithinRel(0.4, 1e-12));
    CHECK_THAT(length_of("\"in\"", "length = 400"), WithinRel(10.16, 1e-12));
    CHECK_THAT(length_of("\"cm\"", "length = \"400\""), WithinRel(4.0, 1e-12));
    CHECK_THAT(length_of("\"mm\"", "length = \"17 1/8 in\""), WithinRel(17.125 * 0.0254, 1e-12));
}

TEST_CASE("A load is shared by the area that lies under its patch", "[placement]")
{
    const std::string text = tiny::design({{"at = [0, 0, 0]", "at = [0, 0, 0]\nrepeat = { count = 3, along = \"y\", gap = 10 }"},
                                           {"patch = [50, 50]", "patch = [50, 100]"},
                                           {"at = [200, 50]", "at = [200, 125]"}});
    const StatedLoad load = tiny::piece(text).loads.at(0);
    // The patch runs from y 75 to 175: 25 mm on the first board, 65 on the second.
    REQUIRE(load.copies == std::vector<std::size_t>{0, 1});
    CHECK_THAT(load.shares[0], WithinAbs(25.0 / 90, 1e-9));
    CHECK_THAT(load.shares[1], WithinAbs(65.0 / 90, 1e-9));
    CHECK_THAT(load.force.value(), WithinAbs(200, 1e-9));
}

TEST_CASE("A load without a patch stands at a single point of the part", "[placement]")
{
    const StatedLoad load =
        tiny::piece(tiny::design({{"patch = [50, 50]\n", "direction = [3, 0, -4]\n"}, {"at = [200, 50]", "at = [200, 50, 20]"}}))
            .loads.at(0);
    CHECK(load.copies == std::vector<std::size_t>{0});
    CHECK(load.shares == std::vector<double>{1});
    CHECK_FALSE(load.patch);
    CHECK_THAT(load.direction[0], WithinAbs(0.6, 1e-12));
    CHECK_THAT(load.direction[2], WithinAbs(-0.8, 1e-12));
}
