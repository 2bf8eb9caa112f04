// species-unsure: what hangs on not knowing the wood.

#include "catch.hpp"
#include "checks/trestle.hpp"

using namespace checked;

namespace {

std::string trestle_of(const std::string& species, const std::string& newtons)
{
    Trestle t;
    t.more = point_load(newtons, "500");
    std::string text = t.text();
    text.replace(text.find("species = \"white oak\""), 21, "species = " + species);
    return text;
}

} // namespace

TEST_CASE("A wood that is known has no such finding", "[species-unsure]")
{
    CHECK(count_of(content_of(trestle_of("\"white oak\"", "140")).findings, "species-unsure") == 0);
    CHECK(count_of(content_of(trestle_of("[\"white oak\"]", "140")).findings, "species-unsure") == 0);
}

TEST_CASE("Where all candidates agree it passes and names the hardest", "[species-unsure]")
{
    const Finding f =
        finding_of(content_of(trestle_of("[\"sugar maple\", \"red maple\"]", "60")).findings, "species-unsure", "stock");
    CHECK(f.verdict == Verdict::pass);
    CHECK(f.where == "red maple"); // the softer of the two sags more
    CHECK_THAT(f.headline, ContainsSubstring("sugar maple passes, red maple passes"));
    CHECK_FALSE(f.utilisation);
}

TEST_CASE("Where the verdict hangs on the wood it warns", "[species-unsure]")
{
    const std::string newtons = "140"; // sags beyond span/300 in pine, not in oak
    REQUIRE(overall_verdict(content_of(trestle_of("\"white oak\"", newtons)).findings) <= Verdict::warn);
    REQUIRE(overall_verdict(content_of(trestle_of("\"eastern white pine\"", newtons)).findings) == Verdict::fail);
    const auto findings = content_of(trestle_of("[\"white oak\", \"eastern white pine\"]", newtons)).findings;
    const Finding& f = finding_of(findings, "species-unsure", "stock");
    CHECK(f.verdict == Verdict::warn);
    CHECK(f.where == "eastern white pine");
    REQUIRE(f.remedy);
    CHECK_THAT(f.remedy.words(), ContainsSubstring("sag by board"));
}

TEST_CASE("Of each check the worst candidate is reported and named", "[species-unsure]")
{
    const auto both = content_of(trestle_of("[\"white oak\", \"eastern white pine\"]", "140")).findings;
    const auto oak = content_of(trestle_of("\"white oak\"", "140")).findings,
               pine = content_of(trestle_of("\"eastern white pine\"", "140")).findings;
    for (const char* check : {"sag", "bending", "shear"}) {
        CAPTURE(check);
        const Finding& f = finding_of(both, check, "board");
        const double worst =
            std::max(*finding_of(oak, check, "board").utilisation, *finding_of(pine, check, "board").utilisation);
        CHECK_THAT(*f.utilisation, WithinRel(worst, 1e-12));
        CHECK_THAT(*f.where, ContainsSubstring("pine"));
    }
    // The heavier wood moves more and is named where that is judged.
    CHECK_THAT(*finding_of(both, "seasonal-size", "board").where, ContainsSubstring("white oak") || ContainsSubstring("pine"));
}

TEST_CASE("The order of the candidates changes nothing but its words", "[species-unsure]")
{
    const auto one = content_of(trestle_of("[\"white oak\", \"eastern white pine\"]", "140")).findings;
    const auto other = content_of(trestle_of("[\"eastern white pine\", \"white oak\"]", "140")).findings;
    REQUIRE(one.size() == other.size());
    for (std::size_t i = 0; i < one.size(); ++i) {
        CHECK(one[i].check == other[i].check);
        CHECK(one[i].verdict == other[i].verdict);
        CHECK(one[i].utilisation == other[i].utilisation);
    }
}
