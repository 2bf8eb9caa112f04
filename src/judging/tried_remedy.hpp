#pragma once
// A change that was tried: the design with it has been checked again.

#include "judging/verdict.hpp"
#include "piece/vary/design_edit.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// Verdict and largest share of the whole changed piece, of the checks that have a share.
struct CheckedAgain {
    Verdict verdict = Verdict::pass; ///< worst of its findings
    std::optional<double> utilisation;
};

/// It passes the finding that it is for, and makes no other worse.
struct TriedRemedy {
    std::string says;             ///< "make the shelf 22 mm thick, 18 mm now", without a capital and a full stop
    std::vector<DesignEdit> edit; ///< what a program would do to the design
    std::optional<double> share;  ///< of the limit that the finding itself then has; none where it is there no longer
    CheckedAgain then;
};

/// One line of "do first": the first change for a finding, or words where there is none that could be tried.
struct FirstStep {
    std::string check, subject, says;
    std::vector<DesignEdit> edit;     ///< empty where it was not tried
    std::optional<CheckedAgain> then; ///< none where it was not tried
};

} // namespace jointwright
