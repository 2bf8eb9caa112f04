// [pattern]: a few leading measures that make a whole piece.

#include "catch.hpp"

#include "checks/registry.hpp"
#include "piece/patterns/pattern.hpp"
#include "piece/tiny_design.hpp"
#include "review/review.hpp"

#include <fmt/core.h>

#include <cmath>
#include <map>
#include <random>

using namespace jointwright;

namespace {

/// What a piece of a pattern is used as.
std::string use_of(std::string_view pattern)
{
    static const std::map<std::string_view, std::string> uses{
        {"slatted-bench", "seat"}, {"panel-table", "table"},    {"dado-bookcase", "shelf"}, {"drawer-in-opening", "cabinet"},
        {"garden-bench", "seat"},  {"breadboard-top", "panel"}, {"panel-door", "panel"},    {"mitred-frame", "panel"}};
    return uses.at(pattern);
}

struct Scene {
    std::string room = "air = \"heated, cold winters\"\nmoisture_at_glue_up = 8";
    std::string wood = "species = \"white oak\"\nfinish = \"urethane varnish, 2 coats\"";
    std::string more; ///< lines of [pattern] beside the measures
    std::string rest; ///< tables after it
};

std::string design_of(const Pattern& pattern, LengthUnit unit, const std::vector<double>& values, const Scene& scene = {})
{
    std::string text =
        fmt::format("[piece]\nname = \"Swept\"\nunits = \"{}\"\nuse = \"{}\"\n[room]\n{}\n[[wood]]\nid = \"oak\"\n{}\n",
                    short_name(unit), use_of(pattern.name), scene.room, scene.wood);
    text += fmt::format("[pattern]\nname = \"{}\"\nwood = \"oak\"\n", pattern.name);
    for (std::size_t i = 0; i < values.size(); ++i)
        if (!std::isnan(values[i])) text += fmt::format("{} = {}\n", pattern.measures[i].key, values[i]);
    return text + scene.more + "\n" + scene.rest;
}

double number_of(const PatternMeasure& measure, const InchesOrMillimetres& pair, LengthUnit unit)
{
    return measure.is_count || unit == LengthUnit::inch ? pair.inches : pair.millimetres;
}

std::vector<double> examples_of(const Pattern& pattern, LengthUnit unit)
{
    std::vector<double> values;
    for (const PatternMeasure& measure : pattern.measures) values.push_back(number_of(measure, measure.example, unit));
    return values;
}

const Pattern& pattern_named(std::string_view name)
{
    for (const Pattern& pattern : all_patterns())
        if (pattern.name == name) return pattern;
    throw std::logic_error("no pattern " + std::string(name));
}

/// Calls with every combination of so many steps of each measure over its range; one left out, where it may be.
template <class Call>
void sweep(const Pattern& pattern, LengthUnit unit, int steps, Call call)
{
    std::vector<std::vector<double>> choices;
    for (const PatternMeasure& measure : pattern.measures) {
        const double least = number_of(measure, measure.least, unit), most = number_of(measure, measure.most, unit);
        std::vector<double> values;
        for (int k = 0; k < steps; ++k) {
            const double value = least + (most - least) * k / (steps - 1);
            values.push_back(measure.is_count ? std::round(value) : value);
        }
        if (!measure.required) values = {std::nan(""), values.front(), values.back()};
        choices.push_back(values);
    }
    std::vector<double> values(choices.size());
    const auto each = [&](auto&& self, std::size_t i) -> void {
        if (i == choices.size()) return call(values);
        for (const double value : choices[i]) {
            values[i] = value;
            self(self, i + 1);
        }
    };
    each(each, 0);
}

std::string fails_of(const Piece& piece)
{
    std::string text;
    for (const Finding& f : check_piece(piece, tiny::facts()).findings)
        if (f.verdict == Verdict::fail || f.verdict == Verdict::cannot_tell)
            text += fmt::format("{} {}: {}\n", f.check, f.subject, f.headline);
    return text;
}

} // namespace

TEST_CASE("Every pattern reads without faults over the whole range of its measures", "[pattern]")
{
    for (const Pattern& pattern : all_patterns())
        for (const LengthUnit unit : {LengthUnit::inch, LengthUnit::millimetre}) {
            std::size_t designs = 0;
            sweep(pattern, unit, 4, [&](const std::vector<double>& values) {
                const std::string text = design_of(pattern, unit, values);
                CAPTURE(text);
                CHECK(tiny::messages(text).empty());
                ++designs;
            });
            CHECK(designs >= 16);
        }
}

TEST_CASE("A lively wood in a damp place and a quiet one in a steady room make sound pieces too", "[pattern]")
{
    const Scene damp{"air = \"outdoors, under a roof, damp climate\"\nmoisture_at_glue_up = 8", "species = \"European beech\"",
                     "", ""};
    const Scene steady{"driest = { moisture = 8 }\ndampest = { moisture = 8 }\nmoisture_at_glue_up = 8",
                       "species = \"teak\"\nrings = \"quarter\"", "", ""};
    for (const Pattern& pattern : all_patterns())
        for (const Scene& scene : {damp, steady})
            sweep(pattern, LengthUnit::millimetre, 3, [&](const std::vector<double>& values) {
                const std::string text = design_of(pattern, LengthUnit::millimetre, values, scene);
                CAPTURE(text);
                CHECK(tiny::messages(text).empty());
            });
}

TEST_CASE("At everyday sizes no check fails a pattern", "[pattern]")
{
    const std::vector<std::string> species{"white oak", "black cherry", "sugar maple"};
    for (const Pattern& pattern : all_patterns())
        for (const LengthUnit unit : {LengthUnit::inch, LengthUnit::millimetre})
            for (const std::string& name : species)
                for (const double scale : {0.9, 1.0, 1.1}) {
                    Scene scene;
                    scene.wood = fmt::format("species = \"{}\"\nfinish = \"urethane varnish, 2 coats\"", name);
                    auto values = examples_of(pattern, unit);
                    for (std::size_t i = 0; i < values.size(); ++i)
                        if (!pattern.measures[i].required) values[i] = std::nan("");
                    values[0] *= scale;
                    const std::string text = design_of(pattern, unit, values, scene);
                    CAPTURE(text);
                    CHECK(fails_of(tiny::piece(text)) == "");
                }
}

TEST_CASE("The lead of a pattern becomes the ids of its starter", "[pattern]")
{
    for (const Pattern& pattern : all_patterns()) {
        CAPTURE(pattern.name);
        const auto starter = embedded_data().find("patterns/" + std::string(pattern.name) + ".toml");
        REQUIRE(starter != embedded_data().end());
        const auto ids = [](const Piece& piece) {
            std::vector<std::string> found;
            for (const Part& part : piece.parts) found.push_back(part.id);
            return found;
        };
        const Piece piece = tiny::piece(design_of(pattern, LengthUnit::millimetre, examples_of(pattern, LengthUnit::millimetre)));
        CHECK(ids(piece) == ids(tiny::piece(starter->second)));
        CHECK(piece.size.has_value());
    }
}

TEST_CASE("A written-out pattern is a design with the same parts, joints and verdicts", "[pattern][expand]")
{
    for (const Pattern& pattern : all_patterns())
        for (const LengthUnit unit : {LengthUnit::inch, LengthUnit::millimetre, LengthUnit::centimetre}) {
            auto values = examples_of(pattern, unit);
            if (unit == LengthUnit::centimetre)
                for (std::size_t i = 0; i < values.size(); ++i)
                    if (!pattern.measures[i].is_count) values[i] /= 10;
            const std::string text = design_of(pattern, unit, values);
            CAPTURE(text);
            const Piece piece = tiny::piece(text);
            const std::string once = expand_design(piece, text, tiny::facts());
            CAPTURE(once);
            CHECK_THAT(once, !ContainsSubstring("[pattern]"));
            CHECK_THAT(once, ContainsSubstring("\nsize = ["));
            const Piece again = tiny::piece(once);
            REQUIRE(again.copies.size() == piece.copies.size());
            for (std::size_t i = 0; i < piece.copies.size(); ++i) {
                CHECK(again.label(i) == piece.label(i));
                for (std::size_t k = 0; k < 3; ++k)
                    CHECK_THAT(again.copies[i].box.hi[k], WithinAbs(piece.copies[i].box.hi[k], 1e-9));
            }
            CHECK(again.joints.size() == piece.joints.size());
            CHECK(again.carries == piece.carries);
            CHECK(again.wall == piece.wall);
            CHECK(expand_design(again, once, tiny::facts()) == once);

            const auto findings = check_piece(piece, tiny::facts()).findings, same = check_piece(again, tiny::facts()).findings;
            REQUIRE(findings.size() == same.size());
            for (std::size_t i = 0; i < findings.size(); ++i) {
                CHECK(findings[i].headline == same[i].headline);
                CHECK(findings[i].verdict == same[i].verdict);
            }
        }
}

TEST_CASE("Gaps, slots and grooves grow with the movement of the wood and the room", "[pattern]")
{
    const Scene quiet{"driest = { moisture = 7.5 }\ndampest = { moisture = 8.5 }\nmoisture_at_glue_up = 8",
                      "species = \"white oak\"", "", ""};
    const Scene lively{"driest = { moisture = 5 }\ndampest = { moisture = 13 }\nmoisture_at_glue_up = 8",
                       "species = \"white oak\"", "", ""};
    const auto joint = [](std::string_view pattern, const Scene& scene, std::size_t index) {
        const Pattern& p = pattern_named(pattern);
        return tiny::piece(design_of(p, LengthUnit::millimetre, examples_of(p, LengthUnit::millimetre), scene)).joints.at(index);
    };
    CHECK(joint("panel-table", lively, 2).buttons->slot.value() > joint("panel-table", quiet, 2).buttons->slot.value());
    CHECK(joint("slatted-bench", lively, 0).clearance > joint("slatted-bench", quiet, 0).clearance);
    CHECK(joint("panel-door", lively, 1).groove_depth.value() > joint("panel-door", quiet, 1).groove_depth.value());
    CHECK(joint("breadboard-top", lively, 0).glued->length < joint("breadboard-top", quiet, 0).glued->length);
    CHECK(joint("panel-table", lively, 0).tenon->width <= joint("panel-table", quiet, 0).tenon->width);
}

TEST_CASE("Slats stand evenly, as many left as right, with gaps that trap no finger", "[pattern]")
{
    const Pattern& bench = pattern_named("slatted-bench");
    sweep(bench, LengthUnit::millimetre, 5, [&](const std::vector<double>& values) {
        CAPTURE(values);
        const Piece piece = tiny::piece(design_of(bench, LengthUnit::millimetre, values));
        const auto slats = piece.copies_named("slat");
        CHECK(slats.size() % 2 == 0);
        const Box &first = piece.copies[slats.front()].box, &second = piece.copies[slats[1]].box,
                  &last = piece.copies[slats.back()].box;
        CHECK_THAT(first.lo[0] + last.hi[0], WithinAbs((*piece.size)[0], 1e-9));
        CHECK(second.lo[0] - first.hi[0] > 12.5e-3);
        CHECK(second.lo[0] - first.hi[0] < 25e-3);
        CHECK(first.hi[0] - first.lo[0] > 18e-3);
    });
}

namespace {

constexpr std::string_view kBench = R"([piece]
name = "Bench"
units = "in"
use = "seat"
[room]
air = "heated, cold winters"
moisture_at_glue_up = 8
[[wood]]
id = "oak"
species = "white oak"
[[wood]]
id = "cherry"
species = "black cherry"
[pattern]
name = "slatted-bench"
length = 42
depth = 14
height = 17.5
wood = "oak"
)";

std::string bench_with(std::string_view from, std::string_view to) { return tiny::replaced(std::string(kBench), from, to); }

} // namespace

TEST_CASE("A second wood, a glue and a size of the maker's own are taken", "[pattern]")
{
    Piece piece = tiny::piece(bench_with("wood = \"oak\"\n", "wood = \"oak\"\nslat_wood = \"cherry\"\nglue = \"epoxy\"\n"));
    CHECK(piece.woods.at(piece.parts.at(0).wood).id == "oak");
    CHECK(piece.woods.at(piece.parts.at(3).wood).id == "cherry");
    CHECK(piece.joints.at(0).glue == tiny::facts().find_glue("epoxy")->name);
    piece = tiny::piece(bench_with("use = \"seat\"", "use = \"seat\"\nsize = [60, 20, 30]\ncarries = [\"slat #1\"]"));
    CHECK_THAT((*piece.size)[0], WithinAbs(60 * 0.0254, 1e-12));
    CHECK(piece.carries == std::vector<std::string>{"slat #1"});
}

TEST_CASE("The wood need not be named where there is one", "[pattern]")
{
    const std::string text =
        tiny::replaced(bench_with("[[wood]]\nid = \"cherry\"\nspecies = \"black cherry\"\n", ""), "wood = \"oak\"\n", "");
    CHECK(tiny::piece(text).parts.size() == 4);
    CHECK(tiny::first_line(tiny::messages(bench_with("wood = \"oak\"\n", ""))) ==
          "t.toml:14:1: error: [pattern] lacks wood [missing-key]");
}

TEST_CASE("Parts and joints of the maker's own stand beside a pattern", "[pattern]")
{
    const std::string own =
        "[[part]]\nid = \"stretcher\"\nwood = \"oak\"\nlength = 10.25\nwidth = 1.5\nthickness = 0.75\ngrain = \"y\"\nface = "
        "\"x\"\nat = [0.5625, 1.875, 4]\nmirror = [\"x\"]\n[[joint]]\nbetween = [\"stretcher\", \"leg\"]\nkind = "
        "\"tenon\"\nglue = \"PVA\"\ntenon = { length = 0.75, width = 1, thickness = 0.25 }\n";
    const std::string text = std::string(kBench) + own;
    const Piece piece = tiny::piece(text);
    CHECK(piece.copies_named("stretcher").size() == 2);
    CHECK(piece.joints.size() == 4);
    CHECK(tiny::read(expand_design(piece, text, tiny::facts())).faults.empty());

    const std::string twice = tiny::messages(tiny::replaced(text, "id = \"stretcher\"", "id = \"leg\""));
    CHECK_THAT(twice, ContainsSubstring("t.toml:21:6: error: two parts have the id \"leg\" [duplicate-id]"));
    CHECK_THAT(twice, ContainsSubstring("the first one is in line 14"));
    const std::string out = tiny::messages(tiny::replaced(text, "at = [0.5625, 1.875, 4]", "at = [0.5625, 1.875, 18]"));
    CHECK_THAT(out, ContainsSubstring("[outside-size]"));
    CHECK_THAT(out, ContainsSubstring("by the pattern; for a larger piece state size in [piece]"));
}

TEST_CASE("Faults of a pattern are told once each, with a line to paste, and bring no others with them", "[pattern][faults]")
{
    struct Row {
        std::string_view from, to, line, fix;
    };
    const Row rows[] = {
        {"slatted-bench", "slated-bench", "t.toml:15:8: error: no pattern is named \"slated-bench\" [unknown-name]",
         "fix: name = \"slatted-bench\""},
        {"name = \"slatted-bench\"\n", "", "t.toml:14:1: error: [pattern] lacks name [missing-key]",
         "fix: name = \"slatted-bench\""},
        {"depth = 14\n", "", "t.toml:14:1: error: [pattern] lacks depth [missing-key]", "fix: depth = 14"},
        {"length = 42", "length = 420",
         "t.toml:16:10: error: length is 420 in; the pattern \"slatted-bench\" takes 16 in to 72 in [out-of-range]",
         "fix: length = 72"},
        {"depth = 14", "depth = \"200 mm\"",
         "t.toml:17:9: error: depth is 7 7/8 in; the pattern \"slatted-bench\" takes 10 in to 24 in [out-of-range]",
         "fix: depth = 10"},
        {"depth = 14", "depht = 14\ndepth = 14", "t.toml:17:1: error: [pattern] has no key \"depht\" [unknown-key]",
         "fix: depth = 14"},
        {"wood = \"oak\"", "wood = \"oka\"", "t.toml:19:8: error: no [[wood]] has the id \"oka\" [unknown-wood]",
         "fix: wood = \"oak\""},
        {"wood = \"oak\"", "wood = \"oak\"\nglue = \"PVAA\"", "t.toml:20:8: error: no glue is named \"PVAA\" [unknown-name]",
         "fix: glue = \"PVA\""},
        {"height = 17.5", "height = [1]", "t.toml:18:10: error: height is a list, but a length is wanted here [wrong-type]", ""},
        {"units = \"in\"", "units = \"inch\"", "t.toml:3:9: error: no unit is named \"inch\" [unknown-name]",
         "fix: units = \"in\""},
        {"[pattern]", "[[pattern]]", "t.toml:14:1: error: pattern is a list, but a table is wanted here [wrong-type]",
         "fix: [pattern]"},
    };
    const std::string rest = "[[load]]\nname = \"pot\"\non = \"slat\"\nforce = \"200 N\"\npatch = [4, 4]\nat = [20, 6]\n";
    for (const Row& row : rows) {
        const std::string text = bench_with(row.from, row.to) + rest;
        CAPTURE(text);
        const std::string messages = tiny::messages(text);
        CHECK(tiny::read(text).faults.size() == 1);
        CHECK(tiny::first_line(messages) == row.line);
        CHECK_THAT(messages, ContainsSubstring(std::string(row.fix)));
    }
}

TEST_CASE("Every starter shows its pattern, and the line makes a sound piece in place of the parts", "[pattern][designs]")
{
    for (const Pattern& pattern : all_patterns()) {
        std::string text = embedded_data().at("patterns/" + std::string(pattern.name) + ".toml");
        CAPTURE(pattern.name);
        const std::string mark = "#   pattern = {";
        REQUIRE(text.find(mark) != std::string::npos);
        text = tiny::replaced(text, mark, "pattern = {");
        CHECK_THAT(text, ContainsSubstring("pattern = { name = \"" + std::string(pattern.name) + "\""));
        const std::size_t parts = text.find("\n[[part]]");
        std::size_t rest = std::min(text.find("\n[[load]]"), text.find("\n[limits]"));
        text = text.substr(0, parts + 1) + (rest == std::string::npos ? "" : text.substr(rest));
        CAPTURE(text);
        CHECK(tiny::messages(text).empty());
        CHECK(fails_of(tiny::piece(text)) == "");
    }
}

TEST_CASE("Every starter tells the measures that its pattern takes, with their ranges", "[pattern][designs]")
{
    for (const Pattern& pattern : all_patterns()) {
        std::string text = embedded_data().at("patterns/" + std::string(pattern.name) + ".toml");
        CAPTURE(pattern.name);
        const LengthUnit unit = tiny::piece(text).units;
        for (std::size_t at = text.find("\n# "); at != std::string::npos; at = text.find("\n# ", at)) text.replace(at, 3, " ");
        std::string told = keys_of(pattern, unit);
        CHECK_THAT(text, ContainsSubstring("What it takes, in " + std::string(unit == LengthUnit::inch ? "inches" : "mm") + ": " +
                                           told));
        for (const PatternMeasure& measure : pattern.measures) CHECK(told.find(measure.key) != std::string::npos);
    }
}

TEST_CASE("Patterns with random characters replaced, removed or doubled are read or refused", "[pattern][hostile]")
{
    std::mt19937 random(11);
    constexpr std::string_view kMarks = "[]{}\"'=,.#-0e\n x\\";
    const std::string sound = std::string(kBench) + "[[joint]]\nbetween = [\"slat #1\", \"leg\"]\nkind = \"face\"\n";
    for (int round = 0; round < 600; ++round) {
        std::string text = sound;
        for (std::size_t n = random() % 3 + 1; n > 0; --n) {
            const std::size_t at = random() % text.size();
            const std::size_t what = random() % 3;
            if (what == 0) text[at] = kMarks[random() % kMarks.size()];
            if (what == 1) text.erase(at, 1 + random() % 20);
            if (what == 2) text.insert(at, text.substr(at, 1 + random() % 20));
        }
        const auto result = tiny::read(text);
        CHECK(result.piece.has_value() == result.faults.empty());
        if (result.piece) CHECK(tiny::read(expand_design(*result.piece, text, tiny::facts())).faults.empty());
    }
}
