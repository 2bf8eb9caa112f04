#include "judging/fits/size_today.hpp"

#include "judging/finding_tools.hpp"

#include <fmt/core.h>

#include <utility>

namespace jointwright {

std::string moistures_words(const PartState& state)
{
    return fmt::format("made at {}, driest {}, dampest {}", moisture_words(state.made), moisture_words(state.driest),
                       moisture_words(state.dampest));
}

void add_moistures(Finding& finding, const PartState& state)
{
    finding.values.push_back({"moisture_made", state.made.percent(), "%"});
    finding.values.push_back({"moisture_driest", state.driest.percent(), "%"});
    finding.values.push_back({"moisture_dampest", state.dampest.percent(), "%"});
}

void add_size_today(Finding& finding, const PartState& state, SizeToday today)
{
    finding.values.push_back({std::move(today.name), today.size, "m"});
    finding.working.push_back({fmt::format("To cut today ({}): {}", moistures_words(state), today.what), std::move(today.formula),
                               std::move(today.with), today.size, "m", "geometry"});
}

} // namespace jointwright
