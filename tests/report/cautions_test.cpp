#include "catch.hpp"
#include "facts/shared_facts.hpp"

#include "checks/checked.hpp"
#include "report/cautions.hpp"
#include "report/compose.hpp"

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
              "1 mg in a cubic metre", "NIOSH", "OSHA", "EU law", "push blocks", "eye and ear protection", "Guard"}) {
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
    const CautionInputs hazards{"shelf", false, {"epoxy: skin sensitizer"}, {"iroko: irritant"}};
    CHECK_THAT(all_of(hazards), ContainsSubstring("Glue, epoxy: skin sensitizer"));
    CHECK_THAT(all_of(hazards), ContainsSubstring("Dust of iroko: irritant"));
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
