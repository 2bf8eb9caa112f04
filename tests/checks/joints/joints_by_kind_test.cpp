// Every kind of joint in a piece: pegs, recesses, mitres, loose tenons, and what the findings say of them.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

using namespace checked;

namespace {

/// Two posts and a rail between them, of red oak at 12 %, that people sit on.
std::string frame_with(const char* joint, const char* more = "")
{
    return design({
        head_text({.name = "Frame", .use = "seat", .carries = {"rail"}}),
        wood_text("red oak"),
        part_text("post", {450, 60, 60}, "z", "x", "[0, 0, 0]", "copies = [ { at = { right = 900, front = 0, bottom = 0 } } ]"),
        part_text("rail", {780, 90, 32}, "x", "y", "{ left = 60, front = 14, top = 450 }"),
        joint_text("rail", "post", "tenon", "", joint),
        more,
    });
}

Finding strength_of(const std::string& text) { return finding_of(content_of(text).findings, "joint-capacity"); }

/// A shelf 250 mm deep let into two sides.
std::string bookcase(const char* kind, double load = 300)
{
    return design({
        head_text({.name = "Shelf"}),
        wood_text("red oak"),
        part_text("side", {600, 250, 20}, "z", "x", "[0, 0, 0]", "copies = [ { at = { right = 700, front = 0, bottom = 0 } } ]"),
        part_text("shelf", {676, 250, 20}, "x", "z", "[12, 0, 300]"),
        joint_text("shelf", "side", kind, "PVA"),
        load_text("books", "shelf", load, "[350, 125]", "patch = [600, 200]\nlasting = true"),
    });
}

/// A frame of four mitred members, hung by its top, with a weight on its bottom.
std::string mitred(const char* slip)
{
    return design({
        head_text({.name = "Frame", .wall = {"stile"}, .more = "size = [400, 20, 500]"}),
        wood_text("red oak"),
        part_text("stile", {500, 40, 20}, "z", "y", "[0, 0, 0]", "mirror = [\"x\"]"),
        part_text("rail", {400, 40, 20}, "x", "y", "[0, 0, 0]", "mirror = [\"z\"]"),
        joint_text("stile", "rail", "mitre", "PVA", slip),
        load_text("glass", "rail", 60, "[200, 10]", "patch = [300, 15]\nlasting = true"),
    });
}

} // namespace

TEST_CASE("Pegs hold a dry tenon under a push, a tenon without them cannot be told", "[joint-capacity]")
{
    const char* sizes = "tenon = { length = 45, width = 60, thickness = 12 }";
    const Finding bare = strength_of(frame_with("tenon = { length = 25, width = 60, thickness = 12 }"));
    CHECK(bare.verdict == Verdict::cannot_tell);
    CHECK_THAT(bare.headline, ContainsSubstring("its shape alone bears"));
    REQUIRE(bare.remedy);
    CHECK_THAT(bare.remedy.words(), ContainsSubstring("pegs = {"));
    const Finding pegged = strength_of(frame_with(sizes, "pegs = { diameter = 10, count = 2 }\n"));
    REQUIRE(pegged.utilisation);
    CHECK(value_of(pegged, "pull_by_pegs") > 1000);
    CHECK(value_of(pegged, "moment_mean") == value_of(pegged, "moment_by_pegs"));
    CHECK_FALSE(pegged.sources.empty());
    const Finding thin = strength_of(frame_with(sizes, "pegs = { diameter = 3, count = 1 }\n"));
    CHECK(*thin.utilisation > *pegged.utilisation);
    CHECK(thin.verdict == Verdict::fail);
    REQUIRE(thin.remedy);
    CHECK_THAT(thin.remedy.words(), ContainsSubstring("thicker pegs"));
    // Beside glue they are the fallback, not an addition: the hole for them costs a fifth.
    const char* glued = "tenon = { length = 45, width = 60, thickness = 12 }\nglue = \"PVA\"";
    const Finding drilled = strength_of(frame_with(glued, "pegs = { diameter = 10, count = 1 }\n")),
                  whole = strength_of(frame_with(glued));
    CHECK_THAT(value_of(drilled, "moment_mean") / value_of(whole, "moment_mean"), WithinRel(0.8, 1e-9));
    CHECK(*drilled.utilisation > *whole.utilisation);
}

TEST_CASE("A loose tenon is judged as one and lengthens no rail", "[joint-capacity]")
{
    const auto content =
        content_of(frame_with("tenon = { length = 45, width = 60, thickness = 12, loose = true }\nglue = \"PVA\""));
    const Finding& f = finding_of(content.findings, "joint-capacity");
    CHECK_THAT(f.headline, ContainsSubstring("loose tenon"));
    bool told = false, longer = false;
    for (const std::string& line : content.cut_today) {
        told = told || line.find("loose tenon") != std::string::npos;
        longer = longer || line.find("870 mm") != std::string::npos;
    }
    CHECK(told);
    CHECK_FALSE(longer);
    CHECK_THAT(f.headline, ContainsSubstring(std::string("with")));
}

TEST_CASE("Proportions of the trade stand in the finding of a joint", "[joint-capacity]")
{
    const Finding f = strength_of(frame_with("tenon = { length = 20, width = 60, thickness = 12 }\nglue = \"PVA\""));
    CHECK_THAT(f.headline, ContainsSubstring("twice its own thickness"));
    CHECK_THAT(f.headline, ContainsSubstring("common practice, no source"));
}

TEST_CASE("A housed shelf is borne by the wall of its housing", "[joint-capacity]")
{
    const Finding f = strength_of(bookcase("housing"));
    CHECK(f.verdict == Verdict::pass);
    CHECK_THAT(f.headline, ContainsSubstring("housing of shelf in side"));
    REQUIRE(f.utilisation);
    CHECK(value_of(f, "shear") > 150);
    const Finding heavy = strength_of(bookcase("housing", 120000));
    CHECK(heavy.verdict == Verdict::fail);
    REQUIRE(heavy.remedy);
    CHECK_THAT(heavy.remedy.words(), ContainsSubstring("deeper"));
    CHECK_THAT(strength_of(bookcase("sliding dovetail")).headline, ContainsSubstring("sliding dovetail"));
    CHECK(has_value(strength_of(bookcase("sliding dovetail")), "pull_by_wedge"));
}

TEST_CASE("A plain mitre warns, a slip across it does not", "[joint-capacity][glue-line]")
{
    const auto plain = content_of(mitred("")).findings,
               splined = content_of(mitred("spline = { thickness = 5, depth = 12 }")).findings,
               keyed = content_of(mitred("key = { thickness = 4, depth = 28, count = 2 }")).findings,
               dowelled = content_of(mitred("dowels = { diameter = 6, length = 30, count = 2 }")).findings;
    const Finding& alone = finding_of(plain, "glue-line", "stile / rail");
    CHECK(alone.verdict == Verdict::warn);
    CHECK_THAT(alone.headline, ContainsSubstring("held by its glue alone"));
    REQUIRE(alone.remedy);
    CHECK_THAT(alone.remedy.words(), ContainsSubstring("key, spline or dowel"));
    for (const auto* findings : {&splined, &keyed, &dowelled}) {
        CHECK(finding_of(*findings, "glue-line", "stile / rail").verdict == Verdict::pass);
        CHECK(*finding_of(*findings, "joint-capacity").utilisation < 0.2);
    }
    CHECK_THAT(finding_of(splined, "joint-capacity").headline, ContainsSubstring("splined mitre"));
    CHECK_THAT(finding_of(keyed, "joint-capacity").headline, ContainsSubstring("keyed mitre"));
    CHECK_THAT(finding_of(dowelled, "joint-capacity").headline, ContainsSubstring("dowels"));
    CHECK_THAT(finding_of(keyed, "joint-capacity").headline, ContainsSubstring("of stile and rail"));
}
