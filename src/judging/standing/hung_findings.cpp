#include "judging/standing/hung_findings.hpp"

#include "judging/finding_tools.hpp"
#include "mechanics/loads/what_stands.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace jointwright {

namespace {

constexpr std::size_t kNamed = 4; // parts named in one sentence

std::string names_of(const Piece& piece, const HeldGroup& group)
{
    std::vector<std::string> names;
    for (const std::size_t i : group.copies)
        if (const std::string& id = piece.part_of(i).id; std::find(names.begin(), names.end(), id) == names.end())
            names.push_back(id);
    std::string list;
    for (std::size_t k = 0; k < std::min(names.size(), kNamed); ++k) {
        const bool last = k + 1 == names.size();
        list += (k == 0 ? "" : last ? " and " : ", ") + names[k];
    }
    return names.size() > kNamed ? list + " and others" : list;
}

Finding asked(const Prepared& prepared, const HeldGroup& group, std::string headline, std::string remedy)
{
    const Piece& piece = *prepared.piece;
    Finding f = cannot_tell("stands", piece.part_of(group.copies.front()).id, std::move(headline), std::move(remedy));
    f.where = piece.label(group.copies.front(), true);
    f.about.copies = {group.copies.front()};
    double mass = 0;
    for (const std::size_t i : group.copies) mass += prepared.masses[i];
    f.weight = mass;
    f.values = {{"mass", mass, "kg"}};
    return f;
}

std::string hinge_line_words(const Piece& piece, const HeldGroup& group)
{
    return fmt::format(
        "say how it hangs: [[joint]] between = [\"{}\", ...], kind = \"hinge\", hinges = {{ count = 2, gap = ... }}; or name "
        "under wall what is screwed to the wall or stands in the ground",
        piece.label(group.copies.front()));
}

/// A leaf that is the whole piece is asked about where something hangs on the answer: a load, or a use that says that it is hung.
bool matters(const Piece& piece, bool whole)
{
    if (!whole) return true;
    if (piece.use == Use::door || piece.use == Use::gate) return true;
    return (piece.use == Use::panel || piece.use == Use::none) && !piece.loads.empty();
}

} // namespace

HungFindings hung_findings(const Prepared& prepared)
{
    using How = HeldGroup::How;
    const Piece& piece = *prepared.piece;
    HungFindings result;
    result.told.assign(piece.copies.size(), false);
    const std::vector<HeldGroup> groups = held_groups(prepared);
    const auto add = [&](const HeldGroup& group, Finding f) {
        for (const std::size_t i : group.copies) result.told[i] = true;
        keep_worst(result.findings, std::move(f));
    };
    const bool hung_use = piece.use == Use::door || piece.use == Use::gate;
    for (const HeldGroup& group : groups) {
        const bool carries =
            std::any_of(group.copies.begin(), group.copies.end(), [&](std::size_t i) { return prepared.carried[i]; });
        if (group.how == How::nothing && group.made_up() && !carries) {
            add(group, asked(prepared, group,
                             fmt::format("{} hold together, but hang on nothing: how are they held? Until that is told they hold "
                                         "nothing down and are borne by nothing.",
                                         names_of(piece, group)),
                             "of a door " + hinge_line_words(piece, group) +
                                 "; of a drawer draw the runners or the bottom that it slides on, touching it from below"));
            continue;
        }
        const bool whole = groups.size() == 1;
        const bool asks = group.on_edge || (hung_use && whole && group.how == How::stands && piece.wall.empty());
        if (!asks || carries || !matters(piece, whole)) continue;
        add(group,
            asked(prepared, group,
                  fmt::format(
                      "{} {} drawn standing on {} lower edge, where it would fall: a door or gate hangs by its stile, which "
                      "its joints must bear. How is it hung?",
                      names_of(piece, group), group.made_up() ? "are" : "is", group.made_up() ? "their" : "its"),
                  hinge_line_words(piece, group)));
    }
    return result;
}

} // namespace jointwright
