#include "piece/text/reading.hpp"

#include "measure/text.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <tuple>

namespace jointwright {

void Reading::fault(Fault fault)
{
    if (about_shapes) shapes_sound_ = false;
    if (!is_full())
        faults_.push_back(std::move(fault));
    else
        ++unlisted_;
}

void Reading::fault(Spot spot, std::string_view id, std::string says, std::string fix, std::string note)
{
    fault(Fault{spot, std::string(id), std::move(says), std::move(fix), std::move(note)});
}

void Reading::unknown_name(const DesignValue& value, std::string_view id, std::string says,
                           const std::vector<std::string>& nearest, std::string note)
{
    std::string fix;
    if (!nearest.empty()) fix = fixed(value, toml_text(nearest.front()));
    if (nearest.size() > 1) note = fmt::format("near to it: {}; {}", listed(nearest), note);
    fault(value.spot, id, std::move(says), std::move(fix), std::move(note));
}

Faults Reading::sorted_faults()
{
    std::stable_sort(faults_.begin(), faults_.end(), [](const Fault& a, const Fault& b) {
        return std::tie(a.spot.line, a.spot.column) < std::tie(b.spot.line, b.spot.column);
    });
    Faults result = faults_;
    if (unlisted_ > 0)
        result.push_back(
            {{}, "too-many", fmt::format("{} more errors are not listed", unlisted_), {}, "mend the first ones and run again"});
    return result;
}

std::string listed(const std::vector<std::string>& names)
{
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
        text += in_quotes(names[i]);
    }
    return text;
}

} // namespace jointwright
