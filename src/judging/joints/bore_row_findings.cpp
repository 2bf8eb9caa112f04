#include "judging/joints/bore_row_findings.hpp"

#include "judging/finding_tools.hpp"
#include "piece/let_ins/bore_rows.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr double kRounding = 1e-6; // m

double wood_wanted(const Facts& facts, const BoreRow& row)
{
    if (row.kind == BoreRow::Kind::screw) return 0;
    return std::max(facts.number("wall_least").value, facts.number("wall_share").value * row.diameter);
}

std::string remedy_of(const BoreRow& row, double wanted)
{
    const int fits = row.fits(row.diameter + wanted);
    const std::string fewer = fits < row.count ? fmt::format("at most {} of them there", fits) : "a smaller inset";
    return fmt::format("{}, or thinner {}s: {} diameters from middle to middle are usual", fewer, name_of(row.kind),
                       row.kind == BoreRow::Kind::screw ? "four to five" : "two or more");
}

Finding crowded(const Prepared& prepared, const BoreRow& row, double wanted)
{
    const Contact& contact = prepared.layout->contacts[row.contact];
    Finding f;
    f.check = "let-ins";
    f.subject = pair_subject(prepared, contact);
    f.where = pair_place(prepared, contact);
    f.about.copies = {contact.first, contact.second};
    f.verdict = row.between() < kRounding ? Verdict::fail : Verdict::warn;
    const std::string who = fmt::format("The {} {}s between {} and {}", row.count, name_of(row.kind),
                                        prepared.piece->part_of(contact.first).id, prepared.piece->part_of(contact.second).id);
    if (f.verdict == Verdict::fail)
        f.headline = fmt::format("{} do not fit beside each other: {} from middle to middle, {} thick.", who,
                                 size_words(prepared, row.pitch), size_words(prepared, row.diameter));
    else
        f.headline = fmt::format("{} leave only {} of wood between them.", who, size_words(prepared, row.between()));
    f.remedy = remedy_of(row, wanted);
    f.values = {{"pitch", row.pitch, "m"}, {"wood_between", row.between(), "m"}, {"wood_wanted", wanted, "m"}};
    const Facts& facts = *prepared.facts;
    f.working.push_back({"Wood between two of the row", "pitch - D",
                         fmt::format("pitch = {}, D = {}", size_words(prepared, row.pitch), size_words(prepared, row.diameter)),
                         row.between(), "m", "geometry"});
    if (wanted > 0)
        f.working.push_back({"Wood wanted, as beside a mortise", "the larger of the least wall and D/2", "", wanted, "m",
                             facts.number("wall_least").cite.text()});
    f.weight = row.diameter + wanted - row.pitch;
    gather_sources(f);
    return f;
}

} // namespace

std::vector<Finding> crowded_rows(const Prepared& prepared)
{
    std::vector<Finding> findings;
    for (const BoreRow& row : bore_rows(*prepared.piece, prepared.layout->contacts)) {
        const double wanted = wood_wanted(*prepared.facts, row);
        if (row.between() < std::max(wanted - kRounding, kRounding)) findings.push_back(crowded(prepared, row, wanted));
    }
    return findings;
}

} // namespace jointwright
