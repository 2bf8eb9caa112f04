#include "checks/registry.hpp"

#include "checks/checks.hpp"

namespace jointwright {

const std::vector<CheckInfo>& all_checks()
{
    static const std::vector<CheckInfo> checks = {
        {"seasonal-size", "how wide and thick every part is from season to season", check_seasonal_size},
        {"slat-gap", "gaps in a row of like parts: closing, opening, trapping fingers", check_slat_gap},
        {"bind", "a part that swells between two walls of another", check_bind},
        {"cross-grain", "glued faces that want to move by unlike amounts", check_cross_grain},
        {"glue-line", "strength of every glue line by the true relation of its grains", check_glue_line},
        {"sag", "how far rails, slats, shelves and aprons bend in use", check_sag},
        {"bending", "whether lying parts break under people and goods", check_bending},
        {"shear", "shear along the grain of lying parts", check_shear},
        {"notch", "notches and housings: net section, cracks from the stretched side", check_notch},
        {"stands", "parts that touch nothing or hang in the air", check_stands},
        {"dust", "woods whose dust irritates or sensitises", check_dust},
        {"species-unsure", "what hangs on not knowing the wood", nullptr},
    };
    return checks;
}

} // namespace jointwright
