#include "catch.hpp"

#include "judging/finding.hpp"
#include "review/content/report_content.hpp"

#include <limits>

using namespace jointwright;

namespace {

Finding finding(Verdict verdict, std::optional<double> utilisation, std::string subject = "slat", std::string check = "sag")
{
    Finding f;
    f.verdict = verdict;
    f.utilisation = utilisation;
    f.subject = std::move(subject);
    f.check = std::move(check);
    return f;
}

std::vector<std::string> subjects(const std::vector<Finding>& findings)
{
    std::vector<std::string> names;
    for (const Finding& f : findings) names.push_back(f.subject + "," + f.check);
    return names;
}

} // namespace

TEST_CASE("Findings stand by verdict, then utilisation falling, then subject, then check", "[finding]")
{
    std::vector<Finding> findings{
        finding(Verdict::pass, 0.9, "a"),
        finding(Verdict::warn, std::nullopt, "b"),
        finding(Verdict::pass, 0.9, "a", "bending"),
        finding(Verdict::cannot_tell, 5.0, "c"),
        finding(Verdict::fail, std::nullopt, "d"),
        finding(Verdict::warn, 0.2, "z"),
        finding(Verdict::fail, 1.7, "e"),
        finding(Verdict::fail, 2.5, "f"),
        finding(Verdict::pass, 0.9, "A"),
        finding(Verdict::warn, std::numeric_limits<double>::quiet_NaN(), "a"),
    };
    sort_findings(findings);
    CHECK(subjects(findings) ==
          std::vector<std::string>{"f,sag", "e,sag", "d,sag", "c,sag", "z,sag", "a,sag", "b,sag", "A,sag", "a,bending", "a,sag"});
}

TEST_CASE("The verdict of a piece is the worst of its findings, cannot-tell counting as warn", "[finding]")
{
    CHECK(overall_verdict({}) == Verdict::pass);
    CHECK(overall_verdict({finding(Verdict::pass, 0.5)}) == Verdict::pass);
    CHECK(overall_verdict({finding(Verdict::pass, 0.5), finding(Verdict::cannot_tell, {})}) == Verdict::warn);
    CHECK(overall_verdict({finding(Verdict::warn, 1.2), finding(Verdict::pass, 0.5)}) == Verdict::warn);
    CHECK(overall_verdict({finding(Verdict::cannot_tell, {}), finding(Verdict::fail, 2.0), finding(Verdict::warn, 1.1)}) ==
          Verdict::fail);
}

TEST_CASE("Verdicts are counted one by one", "[finding]")
{
    const VerdictCounts counts = count_verdicts(
        {finding(Verdict::pass, {}), finding(Verdict::fail, {}), finding(Verdict::pass, {}), finding(Verdict::cannot_tell, {}),
         finding(Verdict::warn, {}), finding(Verdict::warn, {}), finding(Verdict::warn, {})});
    CHECK(counts.pass == 2);
    CHECK(counts.warn == 3);
    CHECK(counts.fail == 1);
    CHECK(counts.cannot_tell == 1);
}

TEST_CASE("Verdicts have the words of the report format", "[finding]")
{
    CHECK(word_of(Verdict::pass) == "pass");
    CHECK(word_of(Verdict::warn) == "warn");
    CHECK(word_of(Verdict::cannot_tell) == "cannot-tell");
    CHECK(word_of(Verdict::fail) == "fail");
}

TEST_CASE("What a reader gets of equal findings never rises by a last digit", "[finding]")
{
    std::vector<Finding> findings{finding(Verdict::pass, 0.857913651705, "leg C"),
                                  finding(Verdict::pass, 0.857913651697, "leg B")};
    sort_findings(findings);
    CHECK(findings[0].subject == "leg B");
    CHECK(*findings[0].utilisation >= *findings[1].utilisation);
}
