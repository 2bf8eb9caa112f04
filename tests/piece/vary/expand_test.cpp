#include "catch.hpp"

#include "piece/tiny_design.hpp"

using namespace jointwright;

namespace {

void check_same(const Piece& a, const Piece& b)
{
    REQUIRE(a.copies.size() == b.copies.size());
    for (std::size_t i = 0; i < a.copies.size(); ++i) {
        CAPTURE(a.label(i));
        CHECK(a.label(i) == b.label(i));
        CHECK(a.copies[i].mirrored == b.copies[i].mirrored);
        for (std::size_t k = 0; k < 3; ++k) {
            CHECK_THAT(a.copies[i].box.lo[k], WithinAbs(b.copies[i].box.lo[k], 1e-10));
            CHECK_THAT(a.copies[i].box.hi[k], WithinAbs(b.copies[i].box.hi[k], 1e-10));
        }
    }
    CHECK(a.joints.size() == b.joints.size());
    CHECK(a.loads.size() == b.loads.size());
    CHECK(a.assumed == b.assumed);
    CHECK(a.unused == b.unused);
}

void check_round_trip(const std::string& text)
{
    const Piece piece = tiny::piece(text);
    const std::string once = expand_design(piece, text, tiny::facts());
    CAPTURE(once);
    const Piece again = tiny::piece(once);
    check_same(piece, again);
    CHECK(expand_design(again, once, tiny::facts()) == once);
}

} // namespace

TEST_CASE("An expanded design reads back to the same piece and expands to itself", "[expand]")
{
    for (const char* path : {"designs/boot-bench.toml", "designs/hall-table-glued-top.toml", "designs/window-seat-metric.toml",
                             "patterns/slatted-bench.toml", "patterns/panel-table.toml"}) {
        CAPTURE(path);
        check_round_trip(embedded_data().at(path));
    }
}

TEST_CASE("Uneven steps, inches and odd names survive", "[expand]")
{
    check_round_trip(tiny::design(
        {{"\"mm\"", "\"in\""},
         {"[500, 500, 500]", "[500, 500, 700]"},
         {"at = [0, 0, 0]", "at = { left = \"1/3\", front = 0, bottom = 0 }"},
         {"at = [0, 0, 20]", "at = [1, 0, 20]\nrepeat = { count = 4, along = \"x\", to = 399.123456789 }\nmirror = [\"y\"]"},
         {"\"board\"\nwood", "\"b\\u00f6ard \\\"x\\\" \\\\\"\nwood"},
         {"\"board\"]", "\"b\\u00f6ard \\\"x\\\" \\\\\"]"},
         {"on = \"board\"", "on = \"b\\u00f6ard \\\"x\\\" \\\\\""}}));
}

TEST_CASE("Every copy stands on a line of its own", "[expand]")
{
    const std::string text = tiny::design(
        {{"at = [0, 0, 20]",
          "at = { left = 0, back = 40, bottom = 20 }\nrepeat = { count = 2, along = \"x\", gap = 10 }\nmirror = [\"y\"]"},
         {"size = [500, 500, 500]", "size = [500, 100, 500]"}});
    CHECK_THAT(expand_design(tiny::piece(text), text, tiny::facts()),
               ContainsSubstring("face = \"y\"\nat = [0, 0, 20]\ncopies = [\n"
                                 "    { at = [50, 0, 20] },\n"
                                 "    { at = [0, 60, 20], mirrored = [\"y\"] },\n"
                                 "    { at = [50, 60, 20], mirrored = [\"y\"] }\n]\n"));
}

TEST_CASE("A placed copy that is mirrored in itself stays so", "[expand]")
{
    check_round_trip(tiny::design({{"at = [0, 0, 20]", "at = [0, 0, 20]\nmirrored = [\"z\"]"}}));
}
