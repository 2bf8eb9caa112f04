// Screws and buttons of a piece: do they hold, reach, and stand far enough apart; and the screws offered where glue fails.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

using namespace checked;

namespace {

/// A shelf hung by screws under a cleat that is fastened to the wall; made so that the shelf pulls on them with the load.
struct Hung {
    double cleat = 60, diameter = 5, length = 50, load = 300;
    int count = 3;
    const char* glue = "";
    std::string text() const
    {
        return design({
            head_text({.name = "Hung shelf", .wall = {"cleat"}}),
            wood_text("red oak"),
            part_text("shelf", {500, 100, 20}, "x", "z", "[0, 0, 0]"),
            part_text("cleat", {500, 60, cleat}, "x", "z", "[0, 20, 20]"),
            joint_text("shelf", "cleat", "screws", glue,
                       fmt::format("screws = {{ diameter = {}, length = {}, count = {} }}", diameter, length, count)),
            load_text("pans", "shelf", load, "[250, 50]", "patch = [100, 80]\nlasting = true"),
        });
    }
    Finding finding() const { return finding_of(content_of(text()).findings, "fastener", "shelf / cleat"); }
};

} // namespace

TEST_CASE("Screws that a shelf hangs from, by hand", "[fastener-check]")
{
    const Finding f = Hung{}.finding();
    CHECK(f.verdict == Verdict::pass);
    // 30 mm of thread in red oak: 3 × 19.65 × 0.63² × 5 × 30 × 0.9 for a lasting load.
    CHECK_THAT(value_of(f, "pull_allowed"), WithinRel(3 * 19.65 * 0.63 * 0.63 * 5 * 30 * 0.9, 1e-6));
    CHECK(value_of(f, "pull") > 300); // and the shelf's own weight
    CHECK_THAT(value_of(f, "shear"), WithinAbs(0, 1e-6));
    CHECK_THAT(*f.utilisation, WithinRel(value_of(f, "pull") / value_of(f, "pull_allowed"), 1e-9));
    CHECK_THAT(f.headline, ContainsSubstring("pilot"));
    CHECK_FALSE(f.sources.empty());
}

TEST_CASE("Too few screws fail and say how many would do", "[fastener-check]")
{
    Hung heavy;
    heavy.load = 9000;
    const Finding f = heavy.finding();
    CHECK(f.verdict == Verdict::fail);
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("of them"));
    Hung more = heavy;
    more.count = 8;
    CHECK(*more.finding().utilisation < *f.utilisation);
}

TEST_CASE("Screws through the wood, too short or too close are found whatever they bear", "[fastener-check]")
{
    Hung through;
    through.cleat = 25;
    CHECK(through.finding().verdict == Verdict::fail);
    CHECK_THAT(through.finding().headline, ContainsSubstring("come out on the far side"));
    Hung stubby;
    stubby.length = 18;
    CHECK(stubby.finding().verdict == Verdict::fail);
    CHECK_THAT(stubby.finding().headline, ContainsSubstring("do not reach"));
    Hung crowded;
    crowded.count = 30;
    CHECK(crowded.finding().verdict == Verdict::warn);
    CHECK_THAT(crowded.finding().headline, ContainsSubstring("closer than five diameters"));
}

TEST_CASE("Glue and screws are not added up", "[fastener-check]")
{
    Hung both;
    both.glue = "PVA";
    const Finding f = both.finding();
    CHECK(f.verdict == Verdict::pass);
    CHECK_FALSE(f.utilisation);
    CHECK_THAT(f.headline, ContainsSubstring("not added up"));
}

TEST_CASE("Screws without sizes cannot be judged", "[fastener-check]")
{
    std::string text = Hung{}.text();
    const std::size_t at = text.find("screws = {");
    text.erase(at, text.find('\n', at) - at);
    CHECK(finding_of(content_of(text).findings, "fastener", "shelf / cleat").verdict == Verdict::cannot_tell);
}

TEST_CASE("Screws in end grain hold nothing against a pull", "[fastener-check]")
{
    // The cleat stands upright on the shelf: its end grain takes the screws.
    std::string text = Hung{}.text();
    const std::string lying = "length = 500\nwidth = 60\nthickness = 60\ngrain = \"x\"\nface = \"z\"\nat = [0, 20, 20]";
    text.replace(text.find(lying), lying.size(),
                 "length = 300\nwidth = 60\nthickness = 60\ngrain = \"z\"\nface = \"y\"\nat = [220, 20, 20]");
    const Finding f = finding_of(content_of(text).findings, "fastener", "shelf / cleat");
    CHECK(f.verdict == Verdict::fail);
    CHECK_FALSE(f.utilisation);
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("side grain"));
    CHECK_THAT(f.headline, ContainsSubstring("a pull of"));
    CHECK_THAT(f.headline, ContainsSubstring("nothing may be relied on that way"));
}

TEST_CASE("Every glue line that warns or fails offers screws, with slots where the grains cross", "[fastener-check][glue-line]")
{
    std::size_t seen = 0;
    for (const char* design : {"boot-bench", "window-seat-metric", "mirror-frame-wide-flat-sawn"}) {
        CAPTURE(design);
        // Hardly any glue on the slats of the window seat: it must fail.
        std::string text = built_in_design(design);
        const std::string plenty = "{ length = 25, at = \"middle\" }";
        for (std::size_t at = text.find(plenty); at != std::string::npos; at = text.find(plenty))
            text.replace(at, plenty.size(), "{ length = 3, at = \"middle\" }");
        for (const Finding& f : content_of(text).findings) {
            if (f.check != "glue-line" || (f.verdict != Verdict::warn && f.verdict != Verdict::fail)) continue;
            CAPTURE(f.subject);
            REQUIRE(f.remedy);
            CHECK_THAT(f.remedy.words(), ContainsSubstring("wood screws"));
            if (f.remedy.words().find("or screw it") == std::string::npos) continue;
            CHECK_THAT(f.remedy.words(), ContainsSubstring("pilot"));
            CHECK_THAT(f.remedy.words(), ContainsSubstring("slot"));
            ++seen;
        }
    }
    CHECK(seen > 0);
}

TEST_CASE("A part glued by end grain alone is offered screws too, for the load or for its weight", "[fastener-check][glue-line]")
{
    const std::string text = design({
        still_head(true),
        wood_text("red oak", ""),
        part_text("panel", {500, 100, 20}, "x", "z", "[0, 0, 0]"),
        part_text("rail", {300, 60, 20}, "y", "z", "{ left = 200, front = 100, bottom = 0 }"),
        joint_text("rail", "panel", "butt", "PVA"),
    });
    const Finding f = finding_of(content_of(text).findings, "glue-line", "rail / panel");
    CHECK(f.verdict == Verdict::fail);
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("tenon"));
    CHECK_THAT(f.remedy.words(), ContainsSubstring("wood screws"));
}

namespace {

/// A bearer screwed through into the end of a stretcher that carries a seat, between two bearers on legs.
std::string trestle_seat(const std::string& screws, bool bearer_first = true)
{
    return design({
        head_text({.name = "Trestle", .use = "seat", .carries = {"stretcher"}, .more = "size = [900, 400, 450]", .dampest = 16}),
        wood_text("white oak"),
        part_text("bearer", {450, 120, 40}, "z", "x", "[0, 100, 0]", "mirror = [\"x\"]"),
        part_text("stretcher", {820, 120, 60}, "x", "z", "{ left = 40, front = 100, top = 450 }"),
        joint_text(bearer_first ? "bearer" : "stretcher", bearer_first ? "stretcher" : "bearer", "screws", "",
                   "screws = " + screws),
    });
}

Finding fixed_by(const std::string& text) { return finding_of(content_of(text).findings, "fastener"); }

} // namespace

TEST_CASE("A push that turns a screwed joint draws its screws; in end grain that warns at best", "[fastener-check]")
{
    const Finding f = fixed_by(trestle_seat("{ diameter = 6, length = 100, count = 2 }"));
    CHECK(value_of(f, "pull") > 0);
    CHECK_THAT(f.headline, ContainsSubstring("that turn the joint"));
    CHECK(f.verdict != Verdict::pass);
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("cross dowel"));
    bool told = false;
    for (const WorkingStep& step : f.working) told = told || step.says.find("threads in end grain") != std::string::npos;
    CHECK(told);
    CHECK_THAT(f.headline, ContainsSubstring("eats plain steel")); // white oak at 16 %
}

TEST_CASE("Lag screws, nails, pocket screws and bolts are each judged as what they are", "[fastener-check]")
{
    const Finding wood = fixed_by(trestle_seat("{ diameter = 6, length = 100, count = 2 }")),
                  lag = fixed_by(trestle_seat("{ kind = \"lag screw\", diameter = 8, length = 110, count = 2 }")),
                  nail = fixed_by(trestle_seat("{ kind = \"nail\", diameter = 4, length = 90, count = 2 }")),
                  pocket = fixed_by(trestle_seat("{ kind = \"pocket screw\", diameter = 4.5, length = 40, count = 2 }", false)),
                  bolt = fixed_by(trestle_seat("{ kind = \"bolt\", diameter = 8, length = 130, count = 2, cross_dowel = 12 }"));
    CHECK_THAT(lag.headline, ContainsSubstring("lag screws"));
    CHECK_THAT(nail.headline, ContainsSubstring("nails"));
    CHECK_THAT(pocket.headline, ContainsSubstring("pocket screws"));
    CHECK_THAT(bolt.headline, ContainsSubstring("bolts with cross dowels"));
    REQUIRE(nail.utilisation);
    REQUIRE(wood.utilisation);
    CHECK(*nail.utilisation > *wood.utilisation);
    // What lag screws hold in end grain counts, three quarters of it; a cross dowel pulls on long grain.
    CHECK(lag.verdict == Verdict::pass);
    CHECK(bolt.verdict == Verdict::pass);
    CHECK_THAT(value_of(pocket, "penetration"), WithinRel(0.020, 1e-9));
}

TEST_CASE("A bolt wants its cross dowel told, and wood ahead of it", "[fastener-check]")
{
    const Finding untold = fixed_by(trestle_seat("{ kind = \"bolt\", diameter = 8, length = 130, count = 2 }"));
    CHECK(untold.verdict == Verdict::cannot_tell);
    REQUIRE(untold.remedy);
    CHECK_THAT(untold.remedy.words(), ContainsSubstring("cross_dowel"));
    const Finding brief = fixed_by(trestle_seat("{ kind = \"bolt\", diameter = 8, length = 80, count = 2, cross_dowel = 12 }"));
    CHECK(brief.verdict == Verdict::warn);
    CHECK_THAT(brief.headline, ContainsSubstring("seven of its diameters"));
}

TEST_CASE("Screws named the wrong way round are told how to turn them", "[fastener-check]")
{
    const Finding f = fixed_by(trestle_seat("{ diameter = 6, length = 100, count = 2 }", false));
    CHECK(f.verdict == Verdict::fail);
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("drives them through bearer into stretcher"));
}

TEST_CASE("A load that bends a slat does not count against the screws it lies on", "[fastener-check]")
{
    const auto loaded = [](const char* more) {
        return fixed_by(design({
            head_text({.name = "Slat", .wall = {"rail"}}),
            wood_text("red oak"),
            part_text("rail", {300, 100, 60}, "y", "x", "[0, 0, 0]", "copies = [ { at = [840, 0, 0] } ]"),
            part_text("slat", {900, 80, 20}, "x", "z", "[0, 100, 100]"),
            joint_text("slat", "rail", "screws", "", "screws = { diameter = 4, length = 45, count = 1 }"),
            load_text("weight", "slat", 800, "[450, 140, 120]", more),
        }));
    };
    const Finding bent = loaded("lasting = true"), shoved = loaded("lasting = true\ndirection = [0, 1, 0]");
    CHECK(bent.verdict == Verdict::pass);
    CHECK(value_of(bent, "shear") < 0.15 * 400); // its ends slide by a hair against friction, and no more
    CHECK(value_of(shoved, "shear") > 350);      // half of it on either rail
}

TEST_CASE("Where glue finds end grain alone its screws carry", "[fastener-check]")
{
    std::string text = trestle_seat("{ diameter = 6, length = 100, count = 2 }");
    text.insert(text.find("screws = {"), "glue = \"PVA\"\n");
    const Finding f = fixed_by(text);
    CHECK(f.headline.find("not added up") == std::string::npos);
    CHECK(value_of(f, "shear_allowed") > 0);
}
