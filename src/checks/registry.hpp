#pragma once
// The list of checks. Adding one is one file in its room, its name and a line in registry.cpp, one test and one explanation in data/checks/.

#include "judging/finding.hpp"
#include "mechanics/prepared.hpp"

#include <string_view>
#include <vector>

namespace jointwright {

struct CheckInfo {
    std::string_view id;
    std::string_view words;                       ///< a few words for the list
    std::vector<Finding> (*run)(const Prepared&); ///< pure; one finding for each subject, the worst copy in it
};

const std::vector<CheckInfo>& all_checks();

/// The findings of one check alone, as it gives them. @throws std::out_of_range  no check that looks at one combination has that id
std::vector<Finding> run_check(std::string_view id, const Prepared& prepared);

} // namespace jointwright
