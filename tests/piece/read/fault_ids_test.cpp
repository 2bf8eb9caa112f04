// One tiny input for each kind of fault, with the whole first line that a maker reads.

#include "catch.hpp"

#include "piece/tiny_design.hpp"

#include <algorithm>

using namespace jointwright;

namespace {

struct Row {
    std::string_view from, to; ///< what is replaced in the tiny design
    std::string_view line;     ///< first line of the messages
};

void check_rows(const std::vector<Row>& rows)
{
    for (const Row& row : rows) {
        const std::string text = tiny::design({{row.from, row.to}});
        const std::string messages = tiny::messages(text);
        CAPTURE(row.to, messages);
        CHECK(tiny::first_line(messages) == row.line);
    }
}

} // namespace

TEST_CASE("The tiny design is sound", "[faults]") { CHECK(tiny::messages(tiny::design()).empty()); }

TEST_CASE("Missing keys and sections", "[faults]")
{
    check_rows({
        {"name = \"Tiny\"\n", "", "t.toml:1:1: error: [piece] lacks name [missing-key]"},
        {"units = \"mm\"\n", "", "t.toml:1:1: error: [piece] lacks units [missing-key]"},
        {"use = \"none\"\n", "", "t.toml:1:1: error: [piece] lacks use [missing-key]"},
        {"\"none\"", "\"seat\"", "t.toml:1:1: error: [piece] lacks carries [missing-key]"},
        {"air = \"heated, cold winters\"\n", "", "t.toml:6:1: error: [room] lacks air, or driest and dampest [missing-key]"},
        {"air = \"heated, cold winters\"", "driest = { moisture = 6 }", "t.toml:6:1: error: [room] lacks dampest [missing-key]"},
        {"moisture_at_glue_up = 8\n", "", "t.toml:6:1: error: [room] lacks moisture_at_glue_up [missing-key]"},
        {"species = \"white oak\"\n", "", "t.toml:9:1: error: wood \"oak\" lacks species [missing-key]"},
        {"id = \"board\"\n", "", "t.toml:12:1: error: [[part]] lacks id [missing-key]"},
        {"length = 400\n", "", "t.toml:12:1: error: part \"board\" lacks length [missing-key]"},
        {"grain = \"x\"\n", "", "t.toml:12:1: error: part \"board\" lacks grain [missing-key]"},
        {"at = [0, 0, 0]\n", "", "t.toml:12:1: error: part \"board\" lacks at [missing-key]"},
        {"[0, 0, 0]", "{ left = 0, bottom = 0 }", "t.toml:20:6: error: at lacks front or back [missing-key]"},
        {"kind = \"butt\"\n", "", "t.toml:30:1: error: joint \"post\" / \"board\" lacks kind [missing-key]"},
        {"force = \"200 N\"\n", "", "t.toml:33:1: error: load \"pot\" lacks force [missing-key]"},
        {"patch = [50, 50]\n", "",
         "t.toml:33:1: error: load \"pot\" lacks patch: with two coordinates at is the middle of a patch [missing-key]"},
        {"size = [500, 500, 500]\n", "", ""},
        {"at = [0, 0, 0]\n", "at = [0, 0, 0]\nnotches = [{ from = \"top\", depth = 5, width = 9, first = 0, count = 2 }]\n",
         "t.toml:21:12: error: notches lacks step [missing-key]"},
        {"kind = \"butt\"", "kind = \"butt\"\nglued = { length = 20 }",
         "t.toml:33:1: error: joint \"post\" / \"board\" says where it is glued, but lacks glue [missing-key]"},
    });
    CHECK(tiny::first_line(tiny::messages("")) ==
          "t.toml: error: the design is empty; it starts with [piece], [room], [[wood]] and [[part]] [missing-key]");
    CHECK(tiny::first_line(tiny::messages("# nothing yet\n")) == tiny::first_line(tiny::messages("")));
    CHECK(tiny::first_line(tiny::messages("[piece]\n")) == "t.toml: error: the design lacks [room] [missing-key]");
}

TEST_CASE("Unknown keys, with the nearest one as the fix", "[faults]")
{
    check_rows({
        {"length", "lenght", "t.toml:12:1: error: part \"board\" lacks length [missing-key]"},
        {"name = \"Tiny\"", "name = \"Tiny\"\ncolour = 3", "t.toml:3:1: error: [piece] has no key \"colour\" [unknown-key]"},
        {"kind = \"butt\"", "kind = \"butt\"\nglu = \"PVA\"",
         "t.toml:33:1: error: joint \"post\" / \"board\" has no key \"glu\" [unknown-key]"},
        {"kind = \"butt\"", "kind = \"butt\"\ntenon = { length = 1, width = 1, thickness = 1 }",
         "t.toml:33:1: error: a joint of kind \"butt\" takes no tenon [unknown-key]"},
        {"[0, 0, 0]", "{ left = 0, fron = 0, bottom = 0 }", "t.toml:20:6: error: at lacks front or back [missing-key]"},
        {"[room]", "[rooom]", "t.toml: error: the design lacks [room] [missing-key]"},
    });
    CHECK_THAT(tiny::messages(tiny::design({{"length", "lenght"}})),
               ContainsSubstring("t.toml:15:1: error: part \"board\" has no key \"lenght\" [unknown-key]\n   15 | lenght = 400\n "
                                 "     | ^~~~~~\n  fix: length = 400\n"));
    CHECK_THAT(tiny::messages(tiny::design({{"kind = \"butt\"", "kind = \"buttons\"\nglue = \"PVA\""}})),
               ContainsSubstring("t.toml:33:1: error: a joint of kind \"buttons\" takes no glue [unknown-key]"));
}

TEST_CASE("Values of the wrong type", "[faults]")
{
    check_rows({
        {"\"Tiny\"", "3", "t.toml:2:8: error: name is a whole number, but a text is wanted here [wrong-type]"},
        {"400", "true", "t.toml:15:10: error: length is true or false, but a length is wanted here [wrong-type]"},
        {"400", "\"long\"", "t.toml:15:10: error: length: \"long\" does not begin with a number [wrong-type]"},
        {"400", "\"0,5\"",
         "t.toml:15:10: error: length: \"0,5\" has a comma in a number; decimals are written with a decimal point [wrong-type]"},
        {"[500, 500, 500]", "[500, 500]", "t.toml:5:8: error: size has 2 numbers; it takes 3 [wrong-type]"},
        {"glue_up = 8", "glue_up = \"8 %\"",
         "t.toml:8:23: error: moisture_at_glue_up is a text, but a bare number is wanted here [wrong-type]"},
        {"[[wood]]", "[wood]",
         "t.toml:9:1: error: [wood] is one table, but a design may have several, each under [[wood]] [wrong-type]"},
        {"[\"post\", \"board\"]", "[\"post\"]",
         "t.toml:31:11: error: between names one part; a joint is between two [wrong-type]"},
        {"at = [0, 0, 0]", "at = 5",
         "t.toml:20:6: error: at is a whole number, but a list of three coordinates or a table of sides is wanted here "
         "[wrong-type]"},
        {"[room]", "[limits]\nsag = \"span/x\"\n[room]",
         "t.toml:7:7: error: sag is \"span/x\"; a share of the span is written span/300 [wrong-type]"},
    });
}

TEST_CASE("Units that are missing or measure something else", "[faults]")
{
    check_rows({
        {"\"200 N\"", "200",
         "t.toml:36:9: error: force: \"200\" has no unit; a force is written like 800 N or 180 lbf [wrong-unit]"},
        {"\"200 N\"", "\"200 kg\"",
         "t.toml:36:9: error: force: \"200 kg\" is a mass, but a force is wanted here, such as 800 N or 180 lbf [wrong-unit]"},
        {"400", "\"400 N\"",
         "t.toml:15:10: error: length: \"400 N\" is a force, but a length is wanted here, such as 12 1/2 in or 305 mm "
         "[wrong-unit]"},
    });
    CHECK_THAT(tiny::messages(tiny::design({{"\"200 N\"", "200"}})), ContainsSubstring("  fix: force = \"200 N\"\n"));
}

TEST_CASE("Values out of range", "[faults]")
{
    check_rows({
        {"400", "0", "t.toml:15:10: error: length is 0; it must be above 0 [out-of-range]"},
        {"400", "-400", "t.toml:15:10: error: length is -400; it must be above 0 [out-of-range]"},
        {"400", "nan", "t.toml:15:10: error: length is nan, which is no finite number [out-of-range]"},
        {"400", "inf", "t.toml:15:10: error: length is inf, which is no finite number [out-of-range]"},
        {"400", "-inf", "t.toml:15:10: error: length is -inf, which is no finite number [out-of-range]"},
        {"400", "20001", "t.toml:15:10: error: length is 20001; a size is at most 20000 mm [out-of-range]"},
        {"400", "1e300", "t.toml:15:10: error: length is 1e300; a size is at most 20000 mm [out-of-range]"},
        {"400", "9223372036854775807",
         "t.toml:15:10: error: length is 9223372036854775807; a size is at most 20000 mm [out-of-range]"},
        {"[0, 0, 0]", "[0, nan, 0]", "t.toml:20:10: error: at is nan, which is no finite number [out-of-range]"},
        {"glue_up = 8", "glue_up = 62",
         "t.toml:8:23: error: moisture_at_glue_up is 62; it must be above 0 and at most 30 % [out-of-range]"},
        {"glue_up = 8", "glue_up = 0",
         "t.toml:8:23: error: moisture_at_glue_up is 0; it must be above 0 and at most 30 % [out-of-range]"},
        {"\"200 N\"", "\"-200 N\"",
         "t.toml:36:9: error: force is \"-200 N\"; it must be above 0 and at most 1000 kN [out-of-range]"},
        {"\"white oak\"", "\"white oak\"\nrings = 91",
         "t.toml:12:9: error: rings is 91; it must be from 0 to 90 degrees [out-of-range]"},
        {"\"white oak\"", "\"white oak\"\nfinish = \"urethane varnish, 22 coats\"",
         "t.toml:12:10: error: urethane varnish is not tabled for 22 coats [out-of-range]"},
        {"[0, 0, 0]", "[0, 0, 0]\nrepeat = { count = 0, along = \"y\", gap = 1 }",
         "t.toml:21:20: error: count is 0; it must be from 1 to 10000 [out-of-range]"},
        {"[0, 0, 0]", "[0, 0, 0]\nrepeat = { count = 2.5, along = \"y\", gap = 1 }",
         "t.toml:21:20: error: count is 2.5; it must be a whole number [out-of-range]"},
        {"[0, 0, 0]", "[0, 0, 0]\nrepeat = { count = 2, along = \"y\", gap = -1 }",
         "t.toml:21:42: error: gap is -1; it must be 0 or above [out-of-range]"},
        {"[0, 0, 0]", "[0, 0, 0]\nrepeat = { count = 3, along = \"y\", to = 250 }",
         "t.toml:21:41: error: 3 copies take 300 mm along y, but from the first one's near side to here there are only 250 mm "
         "[out-of-range]"},
        {"[0, 0, 0]", "[0, 0, 0]\nround_over = 10",
         "t.toml:21:14: error: round_over is 10 mm; it must be less than half of the smaller side, 10 mm [out-of-range]"},
        {"[0, 0, 0]", "[0, 0, 0]\nnotches = [{ from = \"top\", depth = 20, width = 9, first = 0 }]",
         "t.toml:21:36: error: depth is 20 mm, but the part is only 20 mm from that side: a notch must leave some wood "
         "[out-of-range]"},
        {"[0, 0, 0]", "[0, 0, 0]\nnotches = [{ from = \"top\", depth = 5, width = 9, first = 200, step = 100, count = 4 }]",
         "t.toml:21:58: error: the last notch ends 509 mm from the part's end, but the part is 400 mm long [out-of-range]"},
        {"[0, 0, 20]", "[0, 0, 20]\ntaper = { end = \"bottom\", width = 50, thickness = 30 }",
         "t.toml:30:35: error: width of the taper is 50 mm, more than the part's width, 40 mm [out-of-range]"},
        {"[0, 0, 20]", "[0, 0, 20]\ntaper = { end = \"bottom\", width = 30, thickness = 30, flat = [\"left\", \"right\"] }",
         "t.toml:30:62: error: both sides along x are flat, so the width cannot become less there [out-of-range]"},
        {"air = \"heated, cold winters\"", "driest = { moisture = 12 }\ndampest = { moisture = 6 }",
         "t.toml:7:10: error: driest lets wood settle at 12 %, but dampest at 6 %: they are the wrong way round [out-of-range]"},
    });
}

TEST_CASE("Names that nothing has", "[faults]")
{
    check_rows({
        {"\"white oak\"", "\"whit oak\"", "t.toml:11:11: error: no wood is named \"whit oak\" [unknown-wood]"},
        {"\"white oak\"", "[\"red oak\", \"whit oak\"]", "t.toml:11:23: error: no wood is named \"whit oak\" [unknown-wood]"},
        {"wood = \"oak\"", "wood = \"aok\"", "t.toml:14:8: error: no [[wood]] has the id \"aok\" [unknown-wood]"},
        {"\"none\"", "\"noen\"", "t.toml:4:7: error: no use is named \"noen\" [unknown-name]"},
        {"\"mm\"", "\"millimetres\"", "t.toml:3:9: error: no unit is named \"millimetres\" [unknown-name]"},
        {"cold winters", "cold winter", "t.toml:7:7: error: no room is named \"heated, cold winter\" [unknown-name]"},
        {"grain = \"x\"", "grain = \"w\"", "t.toml:18:9: error: no axis is named \"w\" [unknown-name]"},
        {"kind = \"butt\"", "kind = \"but\"", "t.toml:32:8: error: no kind of joint is named \"but\" [unknown-name]"},
        {"kind = \"butt\"", "kind = \"butt\"\nglue = \"PVB\"", "t.toml:33:8: error: no glue is named \"PVB\" [unknown-name]"},
        {"\"white oak\"", "\"white oak\"\nfinish = \"urethane vanish, 2 coats\"",
         "t.toml:12:10: error: no finish is named \"urethane vanish\" [unknown-name]"},
        {"\"white oak\"", "\"white oak\"\nrings = \"flatt\"",
         "t.toml:12:9: error: no ring cut is named \"flatt\" [unknown-name]"},
        {"\"board\"]", "\"bord\"]", "t.toml:31:20: error: no part is named \"bord\" [unknown-part]"},
        {"\"board\"]", "\"board #2\"]",
         "t.toml:31:20: error: no copy is named \"board #2\"; \"board\" has 1 copy [unknown-part]"},
        {"on = \"board\"", "on = \"bard\"", "t.toml:35:6: error: no part is named \"bard\" [unknown-part]"},
    });
    CHECK_THAT(tiny::messages(tiny::design({{"\"white oak\"", "\"whit oak\""}})),
               ContainsSubstring(
                   "   11 | species = \"whit oak\"\n      |           ^~~~~~~~~~\n  fix: species = \"white oak\"\n  note: "));
}

TEST_CASE("Ids twice, or with marks that mean something else", "[faults]")
{
    check_rows({
        {"id = \"post\"", "id = \"board\"", "t.toml:22:6: error: two parts have the id \"board\" [duplicate-id]"},
        {"[[part]]", "[[wood]]\nid = \"oak\"\nspecies = \"red oak\"\n[[part]]",
         "t.toml:13:6: error: two woods have the id \"oak\" [duplicate-id]"},
        {"id = \"oak\"", "id = \"oak #1\"",
         "t.toml:10:6: error: id is \"oak #1\"; it must not hold # or / or control characters [bad-id]"},
        {"id = \"oak\"", "id = \"\"", "t.toml:10:6: error: id is \"\"; it must not be empty [bad-id]"},
        {"id = \"board\"", "id = \"bo\u200Bard\"",
         "t.toml:13:6: error: id is \"bo\u200Bard\"; it holds characters that nobody sees, so that two names may look alike "
         "[bad-id]"},
    });
}

TEST_CASE("Faults of geometry say which copies, by how much and along which axis", "[faults]")
{
    check_rows({
        {"size = [500, 500, 500]", "size = [500, 500, 310]",
         "t.toml:29:6: error: post sticks out of the piece's size by 10 mm along z, at its top side [outside-size]"},
        {"at = [0, 0, 0]", "at = [-2, 0, 0]",
         "t.toml:20:6: error: board sticks out of the piece's size by 2 mm along x, at its left side [outside-size]"},
        {"at = [0, 0, 20]", "at = [0, 0, 25]",
         "t.toml:31:11: error: post and board touch nowhere: post #1 and board #1 are nearest, 5 mm apart along z [joint-apart]"},
        {"at = [0, 0, 20]", "at = [0, 0, 15]",
         "t.toml:31:11: error: board #1 and post #1 share space: 5 mm along z (in all 40 mm along x, 40 mm along y, 5 mm along "
         "z); "
         "a joint of kind \"butt\" is drawn touching [parts-overlap]"},
        {"at = [200, 50]", "at = [450, 50]", "t.toml:38:6: error: no copy of \"board\" lies under load \"pot\" [load-misses]"},
        {"at = [0, 0, 0]", "at = [0, 0, 0]\nnotches = [{ from = \"left\", depth = 5, width = 9, first = 0 }]",
         "t.toml:21:21: error: from is \"left\", an end of the part: its grain runs along x [wrong-side]"},
        {"face = \"z\"", "face = \"x\"", "t.toml:19:8: error: grain and face both run along x [same-axis]"},
        {"[0, 0, 0]", "{ left = 0, right = 9, front = 0, bottom = 0 }",
         "t.toml:20:18: error: at gives both left and right; one of them is enough [one-too-many]"},
    });
    const std::string no_size =
        tiny::design({{"size = [500, 500, 500]\n", ""}, {"at = [0, 0, 0]", "at = [0, 0, 0]\nmirror = [\"x\"]"}});
    CHECK(tiny::first_line(tiny::messages(no_size)) ==
          "t.toml:20:1: error: mirror works about the middle of the piece, but [piece] has no size [missing-key]");
}

TEST_CASE("Within a tenth of a millimetre a part is not outside", "[faults]")
{
    CHECK(tiny::messages(tiny::design({{"size = [500, 500, 500]", "size = [500, 500, 319.95]"}})).empty());
}

TEST_CASE("Keys of the format that wait for their work say so", "[faults]")
{
    check_rows({
        {"glue_up = 8", "glue_up = 8\nlog = \"attic.csv\"", "t.toml:9:1: error: log cannot be used yet [not-yet]"},
    });
}

TEST_CASE("Too much of anything is refused before it costs memory", "[faults]")
{
    check_rows({
        {"[0, 0, 0]", "[0, 0, 0]\nrepeat = { count = 10000, along = \"y\", gap = 0 }\nmirror = [\"x\"]",
         "t.toml:20:6: error: the piece would have 20000 copies of parts; it may have 10000 [too-large]"},
        {"\"white oak\"",
         "[\"white oak\", \"red oak\", \"white ash\", \"sugar maple\", \"red maple\"]\nrings = [0, 5, 10, 15, 20, 25, 30, 35, "
         "40, 45, 50, 55, 60]",
         "t.toml:10:6: error: the lists of woods and ring cuts make 65 combinations; at most 64 are worked out [too-large]"},
        {"\"white oak\"",
         "[\"white oak\", \"red oak\"]\n[[part]]\nid = \"row\"\nwood = \"oak\"\nlength = 100\nwidth = 1\nthickness = 20\ngrain = "
         "\"z\"\n"
         "face = \"y\"\nat = [1000, 0, 0]\nrepeat = { count = 6000, along = \"x\", gap = 0 }",
         "t.toml:10:6: error: 2 combinations of woods and ring cuts for 6002 parts make 12004 in all; at most 10000 are worked "
         "out "
         "[too-large]"},
    });
    const std::string large(5 * 1024 * 1024, ' ');
    CHECK(tiny::first_line(tiny::messages(large)) ==
          "t.toml: error: the text has 5242880 bytes; a design file has at most 4 MiB (4194304 bytes) [too-large]");
}

TEST_CASE("A syntax fault comes alone", "[faults]")
{
    const std::string text = tiny::design({{"length = 400", "length = 17 1/8"}, {"\"white oak\"", "\"whit oak\""}});
    const auto faults = tiny::read(text).faults;
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].id == "syntax");
    CHECK(faults[0].spot.line == 15);
    CHECK(faults[0].fix == "length = \"17 1/8\"");
}

TEST_CASE("All faults come in one go, in the order of the text", "[faults]")
{
    const std::string text = tiny::design({{"\"none\"", "\"noen\""},
                                           {"\"white oak\"", "\"whit oak\""},
                                           {"at = [0, 0, 20]", "at = [0, 0, 25]"},
                                           {"\"200 N\"", "200"}});
    std::vector<std::string> ids;
    for (const Fault& fault : tiny::read(text).faults) ids.push_back(fault.id);
    CHECK(ids == std::vector<std::string>{"unknown-name", "unknown-wood", "joint-apart", "wrong-unit"});
}

TEST_CASE("A fix can be pasted: with its line put in, the fault is gone", "[faults]")
{
    const std::vector<std::pair<std::string_view, std::string_view>> changes{
        {"\"none\"", "\"noen\""},
        {"\"white oak\"", "[\"whit oak\", \"red oak\"]"},
        {"length = 400", "lenght = 400"},
        {"grain = \"x\"", "grain = \"X\""},
        {"\"200 N\"", "200"},
        {"400", "-400"},
        {"400", "\"0,4 m\""},
        {"400", "\"400 kN\""},
        {"\"board\"]", "\"bord\"]"},
        {"cold winters", "cold winter"},
        {"glue_up = 8", "glue_up = \"8 %\""},
        {"kind = \"butt\"", "kind = \"Butt\""},
        {"face = \"z\"", "face = \"x\""},
        {"[0, 0, 0]", "{ left = 0, front = 0 }"},
    };
    for (const auto& [from, to] : changes) {
        const std::string text = tiny::design({{from, to}});
        const auto faults = tiny::read(text).faults;
        CAPTURE(to, text);
        REQUIRE_FALSE(faults.empty());
        const Fault& fault = faults.back();
        if (fault.id == "wrong-unit" && fault.fix.empty()) continue; // a force for a length: there is nothing to guess
        REQUIRE_FALSE(fault.fix.empty());
        std::size_t start = 0;
        for (unsigned line = 1; line < fault.spot.line; ++line) start = text.find('\n', start) + 1;
        std::string mended = text;
        mended.replace(start, text.find('\n', start) - start, fault.fix);
        const auto left = tiny::read(mended).faults;
        CHECK(std::none_of(left.begin(), left.end(),
                           [&](const Fault& f) { return f.id == fault.id && f.spot.line == fault.spot.line; }));
    }
}
