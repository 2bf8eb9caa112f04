// Tables that are broken are refused with the name of the file; woods only when they are asked for.

#include "catch.hpp"
#include "facts/shared_facts.hpp"

using namespace jointwright;
using namespace jointwright::testing;

namespace {

std::string complaint_about_wood(const std::string& text)
{
    const Facts facts(data_with("woods/test-wood.toml", text));
    try {
        facts.find_wood("test wood");
    } catch (const BrokenData& broken) {
        return broken.what();
    }
    return {};
}

std::string complaint_about_table(const std::string& path, const std::string& text)
{
    try {
        const Facts facts(data_with(path, text));
        if (path == "rooms.toml") facts.find_room("any");
        if (path == "glues.toml") facts.find_glue("any");
        if (path == "finishes.toml") facts.find_finish("any");
    } catch (const BrokenData& broken) {
        return broken.what();
    }
    return {};
}

const std::string kHead = "name = \"test wood\"\nkind = \"hardwood\"\n";
const std::string kCite = ", source = \"wood-handbook-2010\", where = \"table 1\", provenance = \"memory\" }\n";

} // namespace

TEST_CASE("A sound wood is no broken wood", "[facts][broken]")
{
    CHECK(complaint_about_wood(kHead).empty());
    CHECK(complaint_about_wood(kHead + "[dry]\nmodulus = { printed = \"12.0\", unit = \"GPa\"" + kCite).empty());
}

TEST_CASE("A broken wood is refused with its file", "[facts][broken]")
{
    struct Row {
        const char* what;
        std::string text;
    };
    for (const Row& row : {
             Row{"not TOML", kHead + "[dry\n"},
             Row{"no kind", "name = \"test wood\"\n"},
             Row{"a kind that is none", "name = \"test wood\"\nkind = \"grass\"\n"},
             Row{"printed is no text", kHead + "[dry]\nmodulus = { printed = 12, unit = \"GPa\"" + kCite},
             Row{"printed is no number", kHead + "[dry]\nmodulus = { printed = \"twelve\", unit = \"GPa\"" + kCite},
             Row{"printed has words behind it", kHead + "[dry]\nmodulus = { printed = \"12 or so\", unit = \"GPa\"" + kCite},
             Row{"printed is not a number at all", kHead + "[dry]\nmodulus = { printed = \"nan\", unit = \"GPa\"" + kCite},
             Row{"printed is infinite", kHead + "[dry]\nmodulus = { printed = \"inf\", unit = \"GPa\"" + kCite},
             Row{"a unit nobody knows", kHead + "[dry]\nmodulus = { printed = \"12\", unit = \"stones\"" + kCite},
             Row{"no unit", kHead + "[dry]\nmodulus = { printed = \"12\"" + kCite},
             Row{"a source that is not in the list", kHead + "[dry]\nmodulus = { printed = \"12\", unit = \"GPa\", source = \"a "
                                                             "friend\", where = \"\", provenance = \"memory\" }\n"},
             Row{"no source", kHead + "[dry]\nmodulus = { printed = \"12\", unit = \"GPa\", provenance = \"memory\" }\n"},
             Row{"a provenance that is none", kHead + "[dry]\nmodulus = { printed = \"12\", unit = \"GPa\", source = "
                                                      "\"wood-handbook-2010\", provenance = \"heard\" }\n"},
             Row{"a bare number", kHead + "[dry]\nmodulus = 12\n"},
         }) {
        CAPTURE(row.what);
        CHECK_THAT(complaint_about_wood(row.text), ContainsSubstring("woods/test-wood.toml"));
    }
}

TEST_CASE("A unit of the wrong kind is refused", "[facts][broken]")
{
    struct Row {
        const char *table, *key, *unit;
    };
    for (const Row& row :
         {Row{"movement", "tangential", "MPa"}, Row{"movement", "tangential", "%"}, Row{"shrinkage", "tangential", "1/%"},
          Row{"dry", "modulus", "mm"}, Row{"dry", "bending_strength", "N"}, Row{"dry", "specific_gravity", "%"},
          Row{"dry", "hardness", "MPa"}, Row{"dry", "impact_bending", "N"}, Row{"elastic", "tangential", "GPa"}}) {
        CAPTURE(row.table, row.key, row.unit);
        const std::string text =
            kHead + "[" + row.table + "]\n" + row.key + " = { printed = \"1.0\", unit = \"" + row.unit + "\"" + kCite;
        CHECK_THAT(complaint_about_wood(text), ContainsSubstring("woods/test-wood.toml"));
    }
}

TEST_CASE("A value of the wrong type is refused, not ignored", "[facts][broken]")
{
    CHECK_THAT(complaint_about_wood("name = \"test wood\"\nkind = \"hardwood\"\nmovement = 0.003\n"),
               ContainsSubstring("woods/test-wood.toml"));
    CHECK_THAT(complaint_about_wood(kHead + "[dry]\nmoisture = \"12 %\"\n"), ContainsSubstring("woods/test-wood.toml"));
    CHECK_THAT(complaint_about_table("rooms.toml", R"([[room]]
name = "cave"
says = "damp"
driest = { moisture = "6 %" }
dampest = { moisture = 20 }
source = "common-practice"
where = "own"
provenance = "estimated"
)"),
               ContainsSubstring("rooms.toml"));
    CHECK_THAT(complaint_about_table("glues.toml", "[[glue]]\nname = \"paste\"\ncreeps = \"yes\"\n"),
               ContainsSubstring("glues.toml"));
}

TEST_CASE("A syntax error in a table is told with line and column", "[facts][broken]")
{
    CHECK_THAT(complaint_about_wood("name = \"test wood\"\nkind = = \"hardwood\"\n"),
               ContainsSubstring("woods/test-wood.toml:2:"));
}

TEST_CASE("Tables that every run needs are read at once", "[facts][broken]")
{
    for (const char* path : {"sources.toml", "strength.toml", "limits.toml", "loads.toml"}) {
        CAPTURE(path);
        DataTexts texts = embedded_data();
        texts.erase(path);
        CHECK_THROWS_AS(Facts(texts), BrokenData);
        CHECK_THAT(complaint_about_table(path, "[broken"), ContainsSubstring(path));
    }
}

TEST_CASE("A limit of nothing or less is refused, so that no finding vanishes by it", "[facts][broken]")
{
    const std::string limits = *shared_facts().text("limits.toml");
    const std::size_t at = limits.find("[sag_slat]"), printed = limits.find("printed", at), end = limits.find('\n', printed);
    REQUIRE(end != std::string::npos);
    for (const std::string wrong : {"0", "-180"}) {
        std::string changed = limits;
        changed.replace(printed, end - printed, "printed = \"" + wrong + "\"");
        CHECK_THAT(complaint_about_table("limits.toml", changed),
                   ContainsSubstring("sag_slat") && ContainsSubstring("a number above 0 is wanted"));
    }
    CHECK(complaint_about_table("limits.toml", limits).empty());
}

TEST_CASE("A number that stands in two tables is refused", "[facts][broken]")
{
    const std::string limits = embedded_data().at("limits.toml");
    const std::string again = "\n[variation_bending]\nsays = \"again\"\nprinted = \"1\"\nunit = \"1\"\nsource = "
                              "\"mechanics\"\nwhere = \"\"\nprovenance = \"memory\"\n";
    CHECK_THAT(complaint_about_table("limits.toml", limits + again), ContainsSubstring("variation_bending"));
}

TEST_CASE("A broken wood harms no run that does not need it", "[facts][broken]")
{
    const Facts facts(data_with("woods/test-wood.toml", kHead + "[dry]\nmodulus = 12\n"));
    CHECK(facts.find_wood("white oak") != nullptr);
    CHECK(facts.find_wood("American cherry") != nullptr);
    CHECK_THROWS_AS(facts.find_wood("test wood"), BrokenData);
}
