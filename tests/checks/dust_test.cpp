// dust: woods whose dust irritates or sensitises.

#include "catch.hpp"
#include "checks/checked.hpp"

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

TEST_CASE("Every wood with a listed hazard says it, with its source and what to do", "[dust]")
{
    std::size_t listed = 0;
    for (const WoodRecord* wood : testing::all_woods()) {
        if (wood->dust.empty()) continue;
        ++listed;
        CAPTURE(wood->name);
        const Finding f = dust_of(wood->name);
        CHECK_THAT(f.headline, ContainsSubstring(wood->dust.front().effect));
        CHECK_FALSE(f.sources.empty());
        CHECK(f.remedy);
        CHECK(f.verdict <= Verdict::warn);
    }
    CHECK(listed > 20);
}

TEST_CASE("Strong sensitisers warn, woods that are not listed pass with a word about all dust", "[dust]")
{
    // Potency of four crosses at most, as the list of woods prints it.
    const auto strong = [](const WoodRecord* wood) {
        return std::any_of(wood->dust.begin(), wood->dust.end(), [](const DustHazard& d) {
            return d.potency.find("+++") != std::string::npos && d.effect.find("spalted") == std::string::npos;
        });
    };
    std::size_t warned = 0, quiet = 0;
    for (const WoodRecord* wood : testing::all_woods()) {
        CAPTURE(wood->name);
        if (strong(wood)) {
            CHECK(dust_of(wood->name).verdict == Verdict::warn);
            ++warned;
        } else if (wood->dust.empty() && quiet < 5) {
            const Finding f = dust_of(wood->name);
            CHECK(f.verdict == Verdict::pass);
            CHECK_THAT(f.headline, ContainsSubstring("all wood dust"));
            ++quiet;
        }
    }
    CHECK(warned > 0);
    CHECK(quiet == 5);
}
