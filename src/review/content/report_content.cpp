#include "review/content/report_content.hpp"

namespace jointwright {

VerdictCounts count_verdicts(const std::vector<Finding>& findings)
{
    VerdictCounts counts;
    for (const Finding& finding : findings) {
        switch (finding.verdict) {
        case Verdict::pass: ++counts.pass; break;
        case Verdict::warn: ++counts.warn; break;
        case Verdict::cannot_tell: ++counts.cannot_tell; break;
        case Verdict::fail: ++counts.fail; break;
        }
    }
    return counts;
}

Verdict overall_verdict(const std::vector<Finding>& findings)
{
    const VerdictCounts counts = count_verdicts(findings);
    if (counts.fail > 0) return Verdict::fail;
    if (counts.warn > 0 || counts.cannot_tell > 0) return Verdict::warn;
    return Verdict::pass;
}

} // namespace jointwright
