#pragma once
// What a check does not see, as data/checks/ID.md tells it.

#include "facts/facts.hpp"
#include "review/content/report_content.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace jointwright {

/// The sentences under "What it leaves out" of a text on a check, one for each point of its list or paragraph; marks of code
/// and the words `jointwright checks` before a check are dropped.
std::vector<std::string> points_left_out(std::string_view text);

/// Those of every check that has a finding, in the order in which the findings first name it; checks without such a text are passed over.
std::vector<LeftOut> left_out_by(const Facts& facts, const std::vector<Finding>& findings);

} // namespace jointwright
