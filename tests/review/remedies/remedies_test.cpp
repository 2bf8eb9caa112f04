// Remedies are tried: what is offered is put into the text of the design and checked from the start again.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "checks/design_text.hpp"

#include "judging/finding_tools.hpp"
#include "piece/vary/editable_design.hpp"
#include "review/remedies/remedies.hpp"

#include <algorithm>
#include <cmath>

using namespace jointwright;
using namespace jointwright::testing;
using checked::built_in_design;
using checked::fill;
using checked::finding_of;
using checked::piece_of;

namespace {

ReportContent tried(const std::string& text, std::optional<LengthUnit> units = {})
{
    CheckOptions options;
    options.units = units;
    options.remedies_tried = true;
    options.text = text;
    return check_piece(piece_of(text), shared_facts(), options);
}

const Finding* same_in(const std::vector<Finding>& findings, const Finding& wanted)
{
    for (const Finding& f : findings)
        if (f.check == wanted.check && f.subject == wanted.subject) return &f;
    return nullptr;
}

bool is_advice(const Finding& f)
{
    return f.check == "clamping" || f.check == "assembly-time" || f.check == "dust" || f.check == "seasonal-size";
}

/// Whole steps of 1 mm or 1/16 in; room and clearance half and a quarter of that.
bool is_shop_step(double metres_value, const std::string& key, LengthUnit units)
{
    const bool fine = key == "clearance", inch = units == LengthUnit::inch;
    const double step = inch ? 0.0254 / (fine ? 64 : 16) : fine ? 0.0005 : 0.001;
    return std::abs(metres_value / step - std::round(metres_value / step)) < 1e-6;
}

/// Keys of sizes that a maker cuts to; screws come in gauges, and places follow from the sizes.
bool is_cut(const DesignEdit& edit)
{
    return edit.unit == DesignEdit::Unit::metres && edit.table != DesignEdit::Table::piece &&
           edit.key.find("diameter") == std::string::npos && edit.key.find("at.") == std::string::npos;
}

void check_remedy(const std::string& text, const ReportContent& drawn, const Finding& finding, const TriedRemedy& remedy)
{
    CAPTURE(drawn.piece_name, finding.check, finding.subject, remedy.says);
    REQUIRE_FALSE(remedy.edit.empty());
    for (const DesignEdit& edit : remedy.edit)
        if (is_cut(edit)) {
            CAPTURE(edit.key, std::get<double>(edit.value));
            CHECK(is_shop_step(std::get<double>(edit.value), edit.key, drawn.units));
        }
    const Piece piece = piece_of(text);
    const std::string changed = EditableDesign(text, piece, shared_facts()).text_with(remedy.edit);
    const DesignRead read = read_design(changed, shared_facts());
    REQUIRE(read.piece); // never one that the format refuses
    CheckOptions options;
    options.units = drawn.units;
    const ReportContent then = check_piece(*read.piece, shared_facts(), options);
    const Finding* there = same_in(then.findings, finding);
    if (remedy.share) {
        REQUIRE(there);
        CHECK(there->verdict == Verdict::pass);
        CHECK_THAT(there->utilisation.value_or(-1), WithinAbs(*remedy.share, 1e-6));
    } else {
        CHECK((there == nullptr || there->verdict == Verdict::pass));
    }
    CHECK(then.verdict == remedy.then.verdict);
    for (const Finding& f : then.findings) {
        if (is_advice(f) || f.verdict == Verdict::pass) continue;
        const Finding* before = same_in(drawn.findings, f);
        CAPTURE(f.check, f.subject, f.headline);
        REQUIRE(before); // nothing new
        CHECK(severity(f.verdict) <= severity(before->verdict));
        if (f.verdict == before->verdict) CHECK(f.utilisation.value_or(0) <= before->utilisation.value_or(0) + 0.01);
    }
}

/// A pine shelf on two posts, with a wood in stock that is stiffer and moves more; `batten`: one across it, glued over its whole width.
std::string shelf_of_pine(bool batten)
{
    return checked::design({
        checked::head_text({.name = "Shelf", .driest = 5, .dampest = 13, .made = 9}),
        checked::wood_text("eastern white pine", "quarter"),
        "[[wood]]\nid = \"better\"\nspecies = \"true hickory\"\nrings = \"flat\"\n",
        checked::part_text("post", {400, 200, 40}, "z", "x", "[0, 0, 0]", "copies = [ { at = [960, 0, 0] } ]"),
        checked::part_text("shelf", {1000, 200, 18}, "x", "z", "[0, 0, 400]"),
        batten ? checked::part_text("batten", {200, 40, 12}, "y", "z", "[480, 0, 388]") : std::string(),
        batten ? checked::joint_text("shelf", "batten", "face", "PVA") : std::string(),
        checked::load_text("weight", "shelf", 160, "[500, 100, 418]", "lasting = true"),
        "[limits]\nsag = \"4.6 mm\"\n",
    });
}

std::vector<std::string> says_of(const Finding& finding)
{
    std::vector<std::string> words;
    for (const TriedRemedy& remedy : finding.tried) words.push_back(remedy.says);
    return words;
}

bool any_has(const std::vector<std::string>& words, const std::string& part)
{
    return std::any_of(words.begin(), words.end(), [&](const std::string& w) { return w.find(part) != std::string::npos; });
}

} // namespace

TEST_CASE("Every remedy of every example passes when it is put into the design, and makes nothing else worse", "[remedies][slow]")
{
    std::size_t told = 0;
    for (const std::string& path : shared_facts().paths_under("designs")) {
        const std::string& text = *shared_facts().text(path);
        const ReportContent content = tried(text);
        for (const Finding& finding : content.findings) {
            if (finding.verdict == Verdict::pass) CHECK(finding.tried.empty());
            for (const TriedRemedy& remedy : finding.tried) {
                ++told;
                check_remedy(text, content, finding, remedy);
            }
        }
    }
    CHECK(told >= 15); // not an empty promise
}

TEST_CASE("In the other unit remedies come in that unit's steps", "[remedies][slow]")
{
    for (const auto& [name, units] :
         {std::pair("wide-shelf-bookcase", LengthUnit::inch), std::pair("cabinet-door-damp-coast", LengthUnit::millimetre),
          std::pair("waiting-bench-tenons-too-short", LengthUnit::inch)}) {
        const std::string text = built_in_design(name);
        const ReportContent content = tried(text, units);
        std::size_t told = 0;
        for (const Finding& finding : content.findings)
            for (const TriedRemedy& remedy : finding.tried) {
                ++told;
                check_remedy(text, content, finding, remedy);
            }
        CAPTURE(name);
        CHECK(told > 0);
    }
}

TEST_CASE("The thin shelf is told the least whole millimetre that holds", "[remedies]")
{
    // It sags 2.007 times its limit: 18 mm times the cube root of that is 22.7, and a millimetre less fails.
    const std::string text = built_in_design("wide-shelf-bookcase");
    const ReportContent content = tried(text);
    const Finding& sag = finding_of(content.findings, "sag", "shelf");
    REQUIRE_FALSE(sag.tried.empty());
    CHECK(sag.tried.front().says == "make the shelf 23 mm thick, 18 mm now");
    REQUIRE(sag.remedy);
    CHECK_THAT(sag.remedy.words(), ContainsSubstring("make the shelf 23 mm thick, 18 mm now: then 0."));
    CHECK(sag.remedy.words().find('%') == std::string::npos);
    const auto with = [&](const char* thickness) {
        std::string changed = text;
        const std::size_t shelf = changed.find("id        = \"shelf\""), at = changed.find("thickness = 18", shelf);
        changed.replace(at, 14, std::string("thickness = ") + thickness);
        return finding_of(checked::content_of(changed).findings, "sag", "shelf").verdict;
    };
    CHECK(with("23") == Verdict::pass);
    CHECK(with("22") != Verdict::pass);
}

TEST_CASE("A remedy that breaks something else is not offered", "[remedies]")
{
    const auto words = [](bool batten) {
        const ReportContent content = tried(shelf_of_pine(batten));
        const Finding& sag = finding_of(content.findings, "sag", "shelf");
        INFO(checked::list_of(content.findings));
        CHECK(sag.verdict != Verdict::pass);
        return says_of(sag);
    };
    CHECK(any_has(words(false), "make the shelf of true hickory"));
    const auto with_batten = words(true);
    CHECK_FALSE(any_has(with_batten, "hickory")); // across the glued batten it moves too much
    CHECK(any_has(with_batten, "thick"));
}

TEST_CASE("What could not be tried says so where it has a size, and none are tried unless asked for", "[remedies]")
{
    const std::string text = built_in_design("wide-shelf-bookcase");
    CheckOptions options;
    options.text = text;
    const ReportContent plain = check_piece(piece_of(text), shared_facts(), options);
    for (const Finding& f : plain.findings) CHECK(f.tried.empty());
    REQUIRE_FALSE(plain.do_first.empty());
    for (const FirstStep& step : plain.do_first) {
        CHECK(step.edit.empty());
        CHECK_FALSE(step.then);
    }
    for (const std::string& path : shared_facts().paths_under("designs"))
        if (path.find("slat-on-end-grain") != std::string::npos || path.find("ledged") != std::string::npos) {
            const ReportContent content = tried(*shared_facts().text(path));
            for (const Finding& f : content.findings) {
                if ((f.verdict != Verdict::fail && f.verdict != Verdict::warn) || !f.remedy || !f.tried.empty()) continue;
                const std::string words = f.remedy.words();
                const bool sized = std::any_of(words.begin(), words.end(), [](char c) { return c >= '0' && c <= '9'; });
                CAPTURE(f.check, f.subject, words);
                CHECK(sized == (words.find("(not tried here)") != std::string::npos));
            }
        }
}

TEST_CASE("Do first has the first remedy of each finding, in order, alike ones once", "[remedies]")
{
    const ReportContent content = tried(built_in_design("garden-bench-interior-pva"));
    REQUIRE_FALSE(content.do_first.empty());
    const FirstStep& first = content.do_first.front();
    CHECK(first.check == content.findings.front().check);
    CHECK(first.subject == content.findings.front().subject);
    REQUIRE(first.then);
    CHECK(first.then->verdict != Verdict::fail); // one bottle mends all six joints
    for (std::size_t i = 0; i < content.do_first.size(); ++i)
        for (std::size_t j = i + 1; j < content.do_first.size(); ++j) CHECK(content.do_first[i].says != content.do_first[j].says);
}

TEST_CASE("Findings know their parts and joints", "[remedies]")
{
    const Piece piece = piece_of(built_in_design("waiting-bench-tenons-too-short"));
    const ReportContent content = checked::content_of(piece);
    const Finding& joint = finding_of(content.findings, "joint-capacity", "long rail / leg");
    REQUIRE(joint.about.parts.size() == 2);
    CHECK(piece.parts[joint.about.parts[0]].id == "long rail");
    CHECK(piece.parts[joint.about.parts[1]].id == "leg");
    REQUIRE(joint.about.joints.size() == 1);
    CHECK(piece.joints[joint.about.joints[0]].first == "long rail");
    const Finding& sag = finding_of(content.findings, "sag", "seat");
    REQUIRE(sag.about.parts.size() == 1);
    CHECK(piece.parts[sag.about.parts[0]].id == "seat");
    CHECK(sag.about.joints.empty());
}

TEST_CASE("The same design gets the same remedies", "[remedies]")
{
    const std::string text = built_in_design("waiting-bench-tenons-too-short");
    const ReportContent a = tried(text), b = tried(text);
    REQUIRE(a.findings.size() == b.findings.size());
    for (std::size_t i = 0; i < a.findings.size(); ++i) {
        CHECK(a.findings[i].remedy == b.findings[i].remedy);
        CHECK(says_of(a.findings[i]) == says_of(b.findings[i]));
    }
}
