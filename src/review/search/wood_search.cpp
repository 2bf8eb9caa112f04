// Every wood of the tables tried for one part.

#include "review/search/size_search.hpp"

#include "judging/finding_tools.hpp"
#include "review/content/run_checks.hpp"

#include <algorithm>
#include <memory>

namespace jointwright {

namespace {

/// The piece with a wood of its own for one part: like the one that it has, but for the species.
Piece with_own_wood(const Piece& piece, std::size_t part)
{
    Piece varied = piece;
    const std::size_t wood = varied.parts[part].wood;
    const bool shared = std::any_of(varied.parts.begin(), varied.parts.end(),
                                    [&](const Part& other) { return &other != &varied.parts[part] && other.wood == wood; });
    if (shared) {
        varied.woods.push_back(varied.woods[wood]);
        varied.woods.back().id += " of " + varied.parts[part].id;
        varied.parts[part].wood = varied.woods.size() - 1;
    }
    return varied;
}

Verdict worst_of(const Trial& trial, const Yardstick& yardstick)
{
    Verdict worst = Verdict::pass;
    for (const Finding& f : trial.findings)
        if (!yardstick.allows(f) && severity(f.verdict) > severity(worst)) worst = f.verdict;
    return worst;
}

/// A wood changes nothing of the layout.
Trial trial_of(const Piece& piece, const Facts& facts, const std::shared_ptr<const Layout>& layout, LengthUnit units)
{
    Trial trial;
    trial.possible = true;
    trial.findings = findings_of({std::make_shared<const Piece>(piece), layout}, facts, units);
    for (Finding& f : trial.findings) f.working.clear(); // a wood's sums are long and there are hundreds
    return trial;
}

double use_of(const WoodTrial& wood) { return wood.governs ? wood.governs->utilisation.value_or(0) : 0; }

void find_border(WoodSearch& search)
{
    for (std::size_t i = 0; i < search.woods.size(); ++i) {
        const WoodTrial& wood = search.woods[i];
        if (wood.verdict == Verdict::cannot_tell || !wood.governs || !wood.governs->utilisation) continue;
        const bool passes = wood.verdict == Verdict::pass;
        std::optional<std::size_t>& best = passes ? search.just_passes : search.just_misses;
        if (!best || (passes ? use_of(wood) > use_of(search.woods[*best]) : use_of(wood) < use_of(search.woods[*best]))) best = i;
    }
}

} // namespace

WoodSearch search_woods(const Piece& piece, const Facts& facts, std::size_t part, LengthUnit units)
{
    Piece varied = with_own_wood(piece, part);
    const auto layout = std::make_shared<const Layout>(layout_of(varied));
    const Trial drawn = trial_of(varied, facts, layout, units);
    WoodChoice& own = varied.woods[varied.parts[part].wood];
    own.own_movement = {}; // measured on the wood that is replaced
    own.own_strength = {};
    std::vector<std::string> names;
    std::vector<Trial> trials;
    for (const Listing& wood : facts.woods()) {
        own.species = {wood.name};
        names.push_back(wood.name);
        trials.push_back(trial_of(varied, facts, layout, units));
    }
    WoodSearch search;
    std::vector<const Trial*> all{&drawn};
    for (const Trial& trial : trials) all.push_back(&trial);
    Yardstick yardstick = yardstick_of(drawn);
    set_aside_what_stays(yardstick, drawn, all, varied.parts[part].id);
    for (const FindingKey& key : yardstick.aside) search.aside.push_back(*drawn.find(key));
    for (const auto& [key, verdict] : yardstick.advice) search.advice.push_back(*drawn.find(key));
    for (std::size_t i = 0; i < trials.size(); ++i) {
        WoodTrial wood;
        wood.name = names[i];
        wood.verdict = worst_of(trials[i], yardstick);
        const Trial& other = trials[i + 1 < trials.size() ? i + 1 : 0];
        if (const Finding* finding = governing(trials[i], other, yardstick)) wood.governs = *finding;
        search.woods.push_back(std::move(wood));
    }
    find_border(search);
    return search;
}

} // namespace jointwright
