#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "checks/checked.hpp"
#include "report/text/text.hpp"
#include "report/words/cautions.hpp"
#include "report/words/compose.hpp"
#include "report/words/people.hpp"

using namespace jointwright;

namespace {

std::string all_of(const CautionInputs& inputs)
{
    std::string text;
    for (const std::string& caution : general_cautions(testing::shared_facts(), inputs)) text += caution + "\n";
    return text;
}

} // namespace

TEST_CASE("The general cautions stand for every use", "[cautions]")
{
    for (const char* use : {"seat", "table", "shelf", "cabinet", "panel", "none"}) {
        CAPTURE(use);
        const std::string text = all_of({use, false, {}, {}});
        for (const char* words :
             {"no proof", "Load it on trial", "away from people", "Arithmetic does not see", "Local codes", "licensed engineers",
              "1 mg in a cubic metre", "NIOSH", "OSHA", "EU law", "push blocks", "eye and ear protection",
              "carcinogenic to humans (group 1; IARC Monographs, volume 62 (1995)", "Guard"}) {
            CAPTURE(words);
            if (std::string(words) == "Guard")
                CHECK_THAT(text, ContainsSubstring("guards"));
            else
                CHECK_THAT(text, ContainsSubstring(words));
        }
    }
    CHECK_THAT(all_of({"seat", false, {}, {}}), ContainsSubstring("seats in public places above all"));
}

TEST_CASE("Oil, glue and dust add their own cautions", "[cautions]")
{
    const CautionInputs plain{"shelf", false, {}, {}};
    CHECK(all_of(plain).find("Rags") == std::string::npos);
    CHECK_THAT(all_of({"shelf", true, {}, {}}), ContainsSubstring("Rags wet with a drying oil"));
    const CautionInputs hazards{"shelf", false, {"epoxy: skin sensitizer"}, {"Dust of iroko: irritant."}};
    CHECK_THAT(all_of(hazards), ContainsSubstring("Glue, epoxy: skin sensitizer"));
    CHECK_THAT(all_of(hazards), ContainsSubstring("Dust of iroko: irritant."));
    CHECK(general_cautions(testing::shared_facts(), hazards).size() ==
          general_cautions(testing::shared_facts(), plain).size() + 2);
}

TEST_CASE("A report names the hazards of its glue, and for a table what is known of it near food", "[cautions]")
{
    const auto cautions_of = [](const char* design) {
        const Piece piece = checked::piece_of(checked::built_in_design(design));
        ReportContent content = checked::content_of(piece);
        add_cautions(content, piece, testing::shared_facts());
        std::string text;
        for (const std::string& caution : content.cautions) text += caution + "\n";
        return text;
    };
    CHECK_THAT(cautions_of("nine-spindles-five-minute-glue"), ContainsSubstring("Glue, quick epoxy: Skin sensitizer"));
    CHECK_THAT(cautions_of("cherry-top-on-buttons"), ContainsSubstring("Near food: harmless once dry"));
    CHECK(cautions_of("nine-spindles-five-minute-glue").find("Near food") == std::string::npos);
}

TEST_CASE("Every wood has its dust told among the cautions, oak and beech first, and never behind a verdict", "[cautions][dust]")
{
    std::string text = checked::built_in_design("boot-bench");
    const std::string cherry = "species = \"black cherry\"";
    text.replace(text.find(cherry), cherry.size(),
                 "species = [\"black cherry\", \"iroko\", \"European beech\", \"American elm\"]");
    const Piece piece = checked::piece_of(text);
    ReportContent content = checked::content_of(piece);
    add_cautions(content, piece, testing::shared_facts());
    std::vector<std::string> dust;
    for (const std::string& caution : content.cautions)
        if (caution.rfind("Dust of ", 0) == 0) dust.push_back(caution.substr(8, caution.find(':') - 8));
    CHECK(dust == std::vector<std::string>{"European beech", "white oak", "American elm", "iroko", "black cherry"});
    const std::string report = write_text(content, {});
    for (std::size_t at = report.find("carcinogenic"); at != std::string::npos; at = report.find("carcinogenic", at + 1))
        CHECK(report.rfind("Cautions", at) != std::string::npos);
    CHECK(report.find("(dust)") == std::string::npos);
    // Machines count it: advice, which passes.
    CHECK(checked::finding_of(content.findings, "dust", "oak").verdict == Verdict::pass);
    CHECK(count_verdicts(content.findings).pass == counts_for_people(content).pass + 2);
}
