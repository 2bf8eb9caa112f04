#include "checks/registry.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>

namespace jointwright {

// Each stands in the file of its name.
using Check = std::vector<Finding>(const Prepared&);
Check check_seasonal_size, check_slat_gap, check_bind, check_cup, check_out_of_square, check_lamination_bow, check_mitre_gap,
    check_cross_grain, check_groove_room, check_slot_length, check_glue_line, check_joint_capacity, check_fastener,
    check_glue_suits, check_assembly_time, check_clamping, check_sag, check_bending, check_shear, check_notch, check_bearing,
    check_leg, check_rack, check_tip, check_creep, check_stands, check_let_ins, check_dust;

const std::vector<CheckInfo>& all_checks()
{
    static const std::vector<CheckInfo> checks = {
        {"seasonal-size", "how wide and thick every part is from season to season", check_seasonal_size},
        {"slat-gap", "gaps in a row of like parts: closing, opening, trapping fingers", check_slat_gap},
        {"bind", "a part that swells between two walls or stops", check_bind},
        {"cup", "boards that go hollow as they dry or swell", check_cup},
        {"out-of-square", "legs and posts whose square section turns into a diamond", check_out_of_square},
        {"lamination-bow", "layers glued with grains parallel that move by unlike amounts", check_lamination_bow},
        {"mitre-gap", "mitres that open at the inside or the outside corner", check_mitre_gap},
        {"cross-grain", "glued faces that want to move by unlike amounts", check_cross_grain},
        {"groove-room", "floating panels: room to swell, and still in the groove when dry", check_groove_room},
        {"slot-length", "screws, buttons and pegs across the grain: travel and slots", check_slot_length},
        {"glue-line", "strength of every glue line by the true relation of its grains", check_glue_line},
        {"joint-capacity", "strength of every kind of joint, by published expressions and mechanics", check_joint_capacity},
        {"fastener", "screws and buttons: hold, reach, distances, pilot holes", check_fastener},
        {"glue-suits", "whether the glue suits its place, its wood, its fit and its day", check_glue_suits},
        {"assembly-time", "closing the joints while the glue is open; stages of a glue-up", check_assembly_time},
        {"clamping", "how hard, with how many clamps and where to press every glue line", check_clamping},
        {"let-ins", "mortises, housings and bores that meet inside a part; walls and bottoms left", check_let_ins},
        {"sag", "how far rails, slats, shelves and aprons bend in use", check_sag},
        {"bending", "whether lying parts break under people and goods", check_bending},
        {"shear", "shear along the grain of lying parts", check_shear},
        {"notch", "notches and housings: net section, cracks from the stretched side", check_notch},
        {"bearing", "whether parts dent each other where they press across the grain", check_bearing},
        {"leg", "legs, posts and case sides: pressed, bent, and as columns", check_leg},
        {"rack", "how far the piece sways when it is pushed", check_rack},
        {"tip", "whether the piece tips over under someone at its edge", check_tip},
        {"creep", "lasting loads: how much sag grows over the years", check_creep},
        {"stands", "parts that touch nothing, hang in the air, fold or come away", check_stands},
        {"dust", "what is known of the dust of the woods", check_dust},
        {"species-unsure", "what hangs on not knowing the wood", nullptr},
    };
    return checks;
}

std::vector<Finding> run_check(std::string_view id, const Prepared& prepared)
{
    const auto& checks = all_checks();
    const auto check = std::find_if(checks.begin(), checks.end(), [&](const CheckInfo& c) { return c.run && c.id == id; });
    if (check == checks.end()) throw std::out_of_range("no check is named " + std::string(id));
    return check->run(prepared);
}

} // namespace jointwright
