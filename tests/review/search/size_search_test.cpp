// How thin, how long, of which woods: the whole check swept over one part.

#include "catch.hpp"
#include "checks/trestle.hpp"

#include "judging/finding_tools.hpp"
#include "review/search/size_search.hpp"

#include <algorithm>
#include <cmath>

using namespace jointwright;
using namespace jointwright::testing;
using checked::built_in_design;
using checked::piece_of;

namespace {

SizeSearch searched(const std::string& text, const std::string& part, VariedSize what)
{
    const Piece piece = piece_of(text);
    for (std::size_t p = 0; p < piece.parts.size(); ++p)
        if (piece.parts[p].id == part) return search_size(text, piece, shared_facts(), p, what, piece.units);
    throw std::logic_error("no part " + part);
}

/// A board on two posts under a lasting weight, with a limit of sag that no other check comes near.
std::string weighed_board(int newtons, double thickness_mm)
{
    checked::Trestle trestle;
    trestle.thickness_mm = thickness_mm;
    trestle.width_mm = 110;
    trestle.more = "[[load]]\nname = \"weight\"\non = \"board\"\nforce = \"" + std::to_string(newtons) +
                   " N\"\nat = [500, 10, 402]\nlasting = true\n[limits]\nsag = \"2 mm\"\n";
    return trestle.text();
}

Finding made_finding(const char* check, const char* subject, Verdict verdict, std::optional<double> use)
{
    Finding f;
    f.check = check;
    f.subject = subject;
    f.verdict = verdict;
    f.utilisation = use;
    return f;
}

Trial made_trial(std::vector<Finding> findings)
{
    Trial trial;
    trial.possible = true;
    trial.findings = std::move(findings);
    return trial;
}

/// The worst utilisation and verdict that a design with that size in its text has for a check.
const Finding finding_with(const std::string& text, const std::string& from, const std::string& to, const char* check,
                           const char* subject)
{
    std::string changed = text;
    const std::size_t at = changed.find(from);
    if (at == std::string::npos) throw std::logic_error("no " + from);
    changed.replace(at, from.size(), to);
    return checked::finding_of(checked::content_of(changed).findings, check, subject);
}

} // namespace

TEST_CASE("The border of a thickness is where the design itself begins to fail", "[size]")
{
    const std::string text = built_in_design("wide-shelf-bookcase");
    const SizeSearch search = searched(text, "shelf", VariedSize::thickness);
    CHECK_FALSE(search.passes_as_drawn);
    REQUIRE(search.passes_at);
    const double edge = in_millimetres(*search.passes_at);
    const std::string drawn = "thickness = 18                    # the mistake";
    const auto sag_at = [&](double mm) { return finding_with(text, drawn, "thickness = " + std::to_string(mm), "sag", "shelf"); };
    CHECK(sag_at(edge + 0.003).verdict == Verdict::pass); // 1 µm is the width of the bracket, text has six digits
    CHECK_THAT(*sag_at(edge).utilisation, WithinAbs(1, 1e-3));
    CHECK(sag_at(edge - 0.003).verdict != Verdict::pass);
    REQUIRE(search.passing);
    REQUIRE(search.failing);
    // Whole steps of half a millimetre on either side.
    CHECK_THAT(in_millimetres(search.passing->size), WithinAbs(std::ceil(edge * 2) / 2, 1e-9));
    CHECK_THAT(in_millimetres(search.failing->size), WithinAbs(std::floor(edge * 2) / 2, 1e-9));
    REQUIRE(search.passing->governs);
    REQUIRE(search.failing->governs);
    CHECK(search.passing->governs->check == "sag");
    CHECK(search.failing->governs->check == "sag");
    CHECK(*search.passing->governs->utilisation < 1);
    CHECK(*search.failing->governs->utilisation > 1);
    // An unanchored case of 240 mm depth tips over, however thick its shelves are.
    REQUIRE(search.aside.size() == 1);
    CHECK(search.aside.front().check == "tip");
}

TEST_CASE("Eight times the weight asks for twice the thickness", "[size]")
{
    const SizeSearch light = searched(weighed_board(100, 30), "board", VariedSize::thickness),
                     heavy = searched(weighed_board(800, 30), "board", VariedSize::thickness);
    REQUIRE(light.passes_at);
    REQUIRE(heavy.passes_at);
    CHECK(light.passes_as_drawn);
    CHECK_FALSE(heavy.passes_as_drawn);
    // Sag falls with the cube of the thickness. Own weight adds a tenth to the light load at most.
    const double ratio = *heavy.passes_at / *light.passes_at;
    CHECK(ratio < 2.01);
    CHECK(ratio > 2 / std::cbrt(1.1));
    CHECK(heavy.failing->governs->check == "sag");
}

TEST_CASE("The same border is found from wherever the design starts", "[size]")
{
    const double from_thick = in_metres(*searched(weighed_board(200, 60), "board", VariedSize::thickness).passes_at);
    const double from_thin = in_metres(*searched(weighed_board(200, 12), "board", VariedSize::thickness).passes_at);
    CHECK_THAT(from_thin, WithinAbs(from_thick, 3e-6)); // either is found to 1 µm
}

TEST_CASE("A length is searched upwards, and the piece goes along", "[size]")
{
    const SizeSearch search = searched(built_in_design("boot-bench"), "long rail", VariedSize::length);
    CHECK(search.passes_as_drawn);
    REQUIRE(search.passes_at);
    CHECK(*search.passes_at > search.as_drawn);
    CHECK(search.passing->size <= *search.passes_at);
    CHECK(search.failing->size > *search.passes_at);
    CHECK(search.held == "the piece is drawn out with it, along x");
}

TEST_CASE("What touches decides which side of a part stays, and how far it can go", "[size]")
{
    const SizeSearch rail = searched(built_in_design("window-seat-metric"), "long rail", VariedSize::thickness);
    CHECK_THAT(rail.held, ContainsSubstring("its back side stays where it is, since"));
    REQUIRE(rail.failing);
    // The bearers' tenons go 18 mm deep into it, and 3 mm must stay before them.
    REQUIRE(rail.failing->governs);
    CHECK(rail.failing->governs->check == "let-ins");
    CHECK_THAT(rail.failing->governs->headline, ContainsSubstring("tenon of bearer"));
    CHECK_THAT(in_millimetres(*rail.passes_at), WithinAbs(21, 0.01));
    const SizeSearch slat = searched(built_in_design("boot-bench"), "slat", VariedSize::thickness);
    CHECK(slat.held == "its top side stays where it is");
}

TEST_CASE("Advice that the drawn size has already does not count, unless it gets worse", "[size]")
{
    const Trial drawn = made_trial(
        {made_finding("glue-line", "slat / rail", Verdict::warn, 0.3), made_finding("sag", "rail", Verdict::pass, 0.8)});
    const Yardstick yardstick = yardstick_of(drawn);
    CHECK(passes(drawn, yardstick));
    CHECK(margin(drawn, yardstick) < 0);
    CHECK(yardstick.allows(made_finding("glue-line", "slat / rail", Verdict::warn, 0.9)));
    CHECK_FALSE(yardstick.allows(made_finding("glue-line", "slat / rail", Verdict::warn, 1.1)));
    CHECK_FALSE(yardstick.allows(made_finding("glue-line", "slat / rail", Verdict::fail, 0.9)));
    CHECK_FALSE(yardstick.allows(made_finding("slat-gap", "slat", Verdict::warn, 0.1))); // new with the size
}

TEST_CASE("Findings that no size cures are set aside only when they are not about the part", "[size]")
{
    const auto trial = [](double other, double own) {
        return made_trial({made_finding("sag", "shelf", other > 1 ? Verdict::fail : Verdict::pass, other),
                           made_finding("sag", "rail", own > 1 ? Verdict::fail : Verdict::pass, own),
                           made_finding("cup", "rail", Verdict::cannot_tell, std::nullopt)});
    };
    const Trial drawn = trial(2.0, 1.5), thicker = trial(1.9, 1.2);
    Yardstick yardstick = yardstick_of(drawn);
    set_aside_what_stays(yardstick, drawn, {&drawn, &thicker}, "rail");
    CHECK(yardstick.aside == std::set<FindingKey>{{"cup", "rail"}, {"sag", "shelf"}});
    CHECK_FALSE(passes(thicker, yardstick));
    CHECK(governing(thicker, drawn, yardstick)->subject == "rail");

    const Trial cured = trial(0.9, 0.9); // some size cures the shelf too: then it counts
    Yardstick stricter = yardstick_of(drawn);
    set_aside_what_stays(stricter, drawn, {&drawn, &thicker, &cured}, "rail");
    CHECK(stricter.aside == std::set<FindingKey>{{"cup", "rail"}});
    CHECK(passes(cured, stricter));
}

TEST_CASE("Nothing passes: what is in the way is told", "[size]")
{
    // A lone shelf that sags however it is cut along its width, since load and stiffness grow alike with nothing of it.
    checked::Trestle trestle;
    trestle.use = "shelf";
    trestle.head = "carries = [\"board\"]\nwall = [\"post\"]";
    trestle.thickness_mm = 4;
    trestle.more = "[limits]\nsag = \"0.01 mm\"\nshelf_load = \"400 N/m\"\n";
    const SizeSearch search = searched(trestle.text(), "board", VariedSize::width);
    CHECK_FALSE(search.passes_at);
    REQUIRE_FALSE(search.in_the_way.empty());
    CHECK(search.in_the_way.front().subject == "board");
}

TEST_CASE("A piece that falls over passes at no size", "[size]")
{
    // Posts that nothing holds upright: a little wider or narrower, the board lies on them as loosely.
    checked::Trestle trestle;
    trestle.use = "shelf";
    trestle.head = "carries = [\"board\"]";
    trestle.thickness_mm = 8;
    trestle.more = "[limits]\nsag = \"50 mm\"\nshelf_load = \"40 N/m\"\n";
    const SizeSearch search = searched(trestle.text(), "board", VariedSize::width);
    CHECK_FALSE(search.passes_at);
    REQUIRE_FALSE(search.in_the_way.empty());
    CHECK(search.in_the_way.front().check == "stands");
}

TEST_CASE("Woods for a shelf: those that pass do so in the design itself", "[size]")
{
    const std::string text = built_in_design("wide-shelf-bookcase");
    const Piece piece = piece_of(text);
    const std::size_t shelf = 1;
    REQUIRE(piece.parts[shelf].id == "shelf");
    const WoodSearch search = search_woods(piece, shared_facts(), shelf, piece.units);
    CHECK(search.woods.size() == shared_facts().woods().size());
    REQUIRE(search.just_passes);
    REQUIRE(search.just_misses);
    const auto with_wood = [&](const std::string& wood) {
        std::string other = text;
        other.replace(other.find("[[part]]"), 0, "[[wood]]\nid = \"other\"\nspecies = \"" + wood + "\"\nrings = \"flat\"\n\n");
        const std::size_t id = other.find("id        = \"shelf\"");
        other.replace(other.find("\"pine\"", id), 6, "\"other\"");
        return checked::content_of(other).findings;
    };
    const WoodTrial &passing = search.woods[*search.just_passes], &missing = search.woods[*search.just_misses];
    CHECK(checked::finding_of(with_wood(passing.name), "sag", "shelf").verdict == Verdict::pass);
    REQUIRE(missing.governs);
    const Finding misses =
        checked::finding_of(with_wood(missing.name), missing.governs->check.c_str(), missing.governs->subject.c_str());
    CHECK(misses.verdict != Verdict::pass);
    CHECK_THAT(*misses.utilisation, WithinRel(*missing.governs->utilisation, 1e-9));
    CHECK(passing.verdict == Verdict::pass);
    CHECK(missing.verdict != Verdict::pass);
}
