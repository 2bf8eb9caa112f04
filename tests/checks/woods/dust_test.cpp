// dust: what is known of the dust of the woods.

#include "catch.hpp"
#include "checks/checked.hpp"
#include "judging/dust_words.hpp"

using namespace checked;

namespace {

Finding dust_of(const std::string& species)
{
    const std::string text = still_head(true) + fill(R"(
[[wood]]
id = "stock"
species = "$wood"
[[part]]
id = "board"
wood = "stock"
length = 600
width = 100
thickness = 20
grain = "x"
face = "z"
at = [0, 0, 0]
)",
                                                     {{"wood", species}});
    return finding_of(content_of(text).findings, "dust", "stock");
}

} // namespace

TEST_CASE("Every wood is told that dust causes cancer, with its source, as advice that passes", "[dust]")
{
    std::size_t listed = 0, silent = 0;
    for (const WoodRecord* wood : testing::all_woods()) {
        if (wood->dust.empty() && silent >= 5) continue;
        CAPTURE(wood->name);
        const Finding f = dust_of(wood->name);
        CHECK(f.verdict == Verdict::pass);
        CHECK_FALSE(f.utilisation);
        CHECK_THAT(f.headline, ContainsSubstring("carcinogenic to humans (group 1; IARC Monographs, volume 62 (1995)"));
        CHECK(f.remedy);
        if (wood->dust.empty()) {
            ++silent;
            CHECK_THAT(f.headline, ContainsSubstring("nothing is listed"));
            CHECK(f.sources.size() == 1);
        } else {
            ++listed;
            for (const DustHazard& d : wood->dust) CHECK_THAT(f.headline, ContainsSubstring(d.effect));
            CHECK(f.sources.size() >= 2);
        }
    }
    CHECK(listed > 60);
    CHECK(silent == 5);
}

TEST_CASE("Oaks and beeches say the same of cancer", "[dust]")
{
    // The chart lists nasopharyngeal cancer with both; of oak in a line of its own.
    std::size_t oaks = 0, beeches = 0;
    for (const WoodRecord* wood : testing::all_woods()) {
        if (!is_oak_or_beech(*wood)) continue;
        CAPTURE(wood->name);
        ++(wood->botanical.rfind("Quercus", 0) == 0 ? oaks : beeches);
        CHECK_THAT(jointwright::dust_of(*wood), ContainsSubstring("linked with cancer of nose and throat"));
    }
    CHECK(oaks >= 20);
    CHECK(beeches == 2);
    CHECK_FALSE(is_oak_or_beech(*testing::shared_facts().find_wood("Tasmanian oak")));
}
