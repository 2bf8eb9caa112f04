#include "judging/joints/glue_stages.hpp"

#include "bond/glue/open_time.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joints/pressed_face.hpp"
#include "mechanics/assembly/take_apart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace jointwright {

namespace {

constexpr std::size_t kMostCopies = 400; // further ones would take long to look through

bool is_shaped(JointKind kind)
{
    switch (kind) {
    case JointKind::tenon:
    case JointKind::dowel:
    case JointKind::bridle:
    case JointKind::dovetail:
    case JointKind::sliding_dovetail: return true;
    default: return false;
    }
}

/// Share of the glue's time that a step takes.
double share_of(const GlueTimes& times, double spreading, double clamps)
{
    return std::max(spreading / in_seconds(times.open),
                    times.total() > times.open ? (spreading + clamps) / in_seconds(times.total()) : 0);
}

/// "#1 to #5, #7".
std::string numbers_words(const std::set<int>& numbers)
{
    std::string words;
    for (auto it = numbers.begin(); it != numbers.end();) {
        const int first = *it;
        int last = first;
        while (++it != numbers.end() && *it == last + 1) last = *it;
        words += (words.empty() ? "#" : ", #") + std::to_string(first);
        if (last > first) words += (last == first + 1 ? ", #" : " to #") + std::to_string(last);
    }
    return words;
}

class StagePlanner {
public:
    explicit StagePlanner(const Prepared& prepared)
        : prepared_(prepared), piece_(*prepared.piece), comfort_(prepared.facts->number("assembly_comfort").value)
    {
    }

    StagePlan plan()
    {
        add_panels();
        take_costs();
        std::vector<double> shares;
        for (const ClosingCost& cost : costs_) shares.push_back(cost.share);
        if (piece_.copies.size() > kMostCopies) {
            plan_.too_many = true;
            return std::move(plan_);
        }
        together_ = put_together(piece_, prepared_.layout->contacts, shares, 1);
        if (!together_.groups.empty()) add_group(together_.groups.size() - 1);
        return std::move(plan_);
    }

private:
    std::optional<GlueTimes> times_of(const std::string& name)
    {
        const GlueRecord* glue = prepared_.facts->find_glue(name);
        const auto times = glue ? glue_times(*glue, piece_.room.shop) : std::nullopt;
        if (!times && std::find(plan_.missing.begin(), plan_.missing.end(), name) == plan_.missing.end())
            plan_.missing.push_back(name);
        return times;
    }

    /// Every glued-up part is a stage, or several, before anything else; alike for all of its copies.
    void add_panels()
    {
        for (std::size_t p = 0; p < piece_.parts.size(); ++p) {
            const Part& part = piece_.parts[p];
            if (!part.glued_up || !part.glued_up->glue) continue;
            const auto times = times_of(*part.glued_up->glue);
            const auto pressed = pressed_edges(prepared_, p, nullptr);
            if (!times || !pressed) continue;
            const double edge = in_seconds(spreading_time(*prepared_.facts, pressed->face.area, false));
            const GlueRecord* glue = prepared_.facts->find_glue(*part.glued_up->glue);
            const double clamps = clamp_plan(*prepared_.facts, pressed->face, pressed->density, glue).clamps *
                                  prepared_.facts->number("assembly_clamp").value;
            const int edges = part.glued_up->boards - 1;
            int at_once = edges;
            // Where the clamps take most of the time, fewer edges at once save little.
            const double bearable = std::max(comfort_, 1.2 * share_of(*times, edge, clamps));
            while (at_once > 1 && share_of(*times, edge * at_once, clamps) > bearable) --at_once;
            const int goes = (edges + at_once - 1) / at_once;
            at_once = (edges + goes - 1) / goes; // even goes
            for (int done = 0; done < edges; done += at_once)
                add_panel_stage(p, std::min(at_once, edges - done), *times, edge, clamps, done);
            plan_.joints += static_cast<std::size_t>(edges) * copies_of(p);
        }
    }

    void add_panel_stage(std::size_t p, int edges, const GlueTimes& times, double edge, double clamps, int done)
    {
        GlueStage stage;
        stage.part = p;
        stage.edges = edges;
        stage.time = edge * edges;
        stage.clamps = clamps;
        stage.share = share_of(times, stage.time, clamps);
        stage.subject = piece_.parts[p].id;
        stage.glue = *piece_.parts[p].glued_up->glue;
        stage.words = fmt::format("boards of {}{}: {} edge{}", copies_of(p) > 1 ? "each " : "", stage.subject, edges,
                                  edges == 1 ? "" : "s");
        if (done > 0) stage.words += " more";
        plan_.stages.push_back(std::move(stage));
    }

    void take_costs()
    {
        const double one_clamp = prepared_.facts->number("assembly_clamp").value;
        for (const Contact& contact : prepared_.layout->contacts) {
            ClosingCost cost;
            if (has_glue(prepared_, contact)) {
                const Joint& joint = piece_.joints[*contact.joint];
                const GlueRecord* glue = prepared_.facts->find_glue(*joint.glue);
                if (const auto times = times_of(*joint.glue)) {
                    cost.spreading = in_seconds(
                        spreading_time(*prepared_.facts, square_metres(spread_area(contact, joint)), is_shaped(joint.kind)));
                    const auto pressed = pressed_face(prepared_, contact, nullptr);
                    const int clamps = !pressed || pressed->wedges_itself || pressed->pulls_shoulders
                                           ? 1
                                           : clamp_plan(*prepared_.facts, pressed->face, pressed->density, glue).clamps;
                    cost.clamps = clamps * one_clamp;
                    cost.share = share_of(*times, cost.spreading, cost.clamps);
                    ++plan_.joints;
                    plan_.whole_share += cost.share;
                    plan_.whole_time += cost.spreading;
                }
            }
            costs_.push_back(cost);
        }
    }

    void take_all_contacts(std::size_t g, std::vector<std::size_t>& contacts) const
    {
        const AssemblyGroup& group = together_.groups[g];
        if (group.locked) {
            const auto within = locked_contacts(group);
            contacts.insert(contacts.end(), within.begin(), within.end());
            return;
        }
        if (group.steps.empty()) return;
        take_all_contacts(group.base, contacts);
        for (const ClosingStep& step : group.steps) {
            take_all_contacts(step.group, contacts);
            contacts.insert(contacts.end(), step.contacts.begin(), step.contacts.end());
        }
    }

    std::vector<std::size_t> locked_contacts(const AssemblyGroup& group) const
    {
        const std::set<std::size_t> members(group.copies.begin(), group.copies.end());
        std::vector<std::size_t> within;
        for (std::size_t c = 0; c < costs_.size(); ++c) {
            const Contact& contact = prepared_.layout->contacts[c];
            if (costs_[c].share > 0 && members.count(contact.first) && members.count(contact.second)) within.push_back(c);
        }
        return within;
    }

    /// What goes into one stage: steps of one group or of groups within each other.
    struct Batch {
        std::vector<std::size_t> contacts, before; ///< `before`: groups to be made first
        double share = 0;
    };

    /// True when a group is made of the same parts as one that is to be made before the batch: the two frames of a table.
    bool is_twin(const AssemblyGroup& group, const Batch& batch) const
    {
        const auto kinds = [&](const AssemblyGroup& of) {
            std::map<std::size_t, int> count;
            for (const std::size_t c : of.copies) ++count[piece_.copies[c].part];
            return count;
        };
        return std::any_of(batch.before.begin(), batch.before.end(), [&](std::size_t g) {
            return together_.groups[g].cost > 0 && kinds(together_.groups[g]) == kinds(group);
        });
    }

    static double cost_of(const AssemblyGroup& group)
    {
        double sum = 0;
        for (const ClosingStep& step : group.steps) sum += step.cost;
        return sum;
    }

    /// Which joints of the design the contacts belong to.
    std::set<std::size_t> joints_in(const std::vector<std::size_t>& contacts) const
    {
        std::set<std::size_t> joints;
        for (const std::size_t c : contacts) joints.insert(*prepared_.layout->contacts[c].joint);
        return joints;
    }
    std::set<std::size_t> joints_in(const AssemblyGroup& group) const
    {
        std::set<std::size_t> joints;
        for (const ClosingStep& step : group.steps) joints.merge(joints_in(step.contacts));
        return joints;
    }

    /// True when a batch of other joints would take a level from the next one, that closes the same joints: both ends of the long rails want
    /// closing at once, the top by itself.
    bool parts_alike(const AssemblyGroup& level, const Batch& batch) const
    {
        const AssemblyGroup& next = together_.groups[level.base];
        const auto here = joints_in(level), there = joints_in(next), in_batch = joints_in(batch.contacts);
        const auto meets = [&](const std::set<std::size_t>& other) {
            return std::any_of(here.begin(), here.end(), [&](std::size_t j) { return other.count(j) > 0; });
        };
        const double both = cost_of(level) + cost_of(next);
        return meets(there) && !meets(in_batch) && both <= comfort_ && batch.share + both > comfort_;
    }

    static void take_step(Batch& batch, const ClosingStep& step)
    {
        batch.contacts.insert(batch.contacts.end(), step.contacts.begin(), step.contacts.end());
        batch.before.push_back(step.group);
        batch.share += step.cost;
    }

    /// The steps of a group too long for one stage, in as many even goes as it takes.
    std::vector<Batch> goes_of(const AssemblyGroup& group) const
    {
        double sum = 0;
        for (const ClosingStep& step : group.steps) sum += step.cost;
        const double wanted = std::max(1.0, std::ceil(sum / comfort_ - 1e-9)), each = sum / wanted;
        std::vector<Batch> goes(1);
        for (const ClosingStep& step : group.steps) {
            const double share = goes.back().share;
            const bool full = share + step.cost > comfort_ + 1e-9;
            const bool even = share + step.cost / 2 > each && static_cast<double>(goes.size()) < wanted;
            if (share > 0 && (full || even)) goes.emplace_back();
            take_step(goes.back(), step);
        }
        return goes;
    }

    /// The stages that make a group, those of the groups within it first.
    void add_group(std::size_t g)
    {
        const AssemblyGroup& whole = together_.groups[g];
        if (whole.cost <= 0) return;
        if (whole.cost <= comfort_ || whole.locked) {
            Batch all;
            all.share = whole.cost;
            take_all_contacts(g, all.contacts);
            add_stage(all);
            return;
        }
        std::vector<Batch> last_first(1);
        std::size_t at = g;
        while (together_.groups[at].cost > 0) {
            const AssemblyGroup& level = together_.groups[at];
            if (level.locked) {
                Batch batch;
                batch.share = level.cost;
                batch.contacts = locked_contacts(level);
                last_first.push_back(std::move(batch));
                break;
            }
            const double sum = cost_of(level);
            Batch& current = last_first.back();
            if (sum > comfort_) {
                std::vector<Batch> goes = goes_of(level);
                for (auto it = goes.rbegin(); it != goes.rend(); ++it) last_first.push_back(std::move(*it));
                last_first.emplace_back();
            } else {
                const bool twin =
                    std::any_of(last_first.begin(), last_first.end(), [&](const Batch& b) { return is_twin(level, b); });
                if (current.share > 0 && (current.share + sum > comfort_ || twin || parts_alike(level, current)))
                    last_first.emplace_back();
                for (const ClosingStep& step : level.steps) take_step(last_first.back(), step);
            }
            at = level.base;
        }
        for (auto it = last_first.rbegin(); it != last_first.rend(); ++it) {
            for (const std::size_t before : it->before) add_group(before);
            add_stage(*it);
        }
    }

    void add_stage(const Batch& batch)
    {
        if (batch.contacts.empty()) return;
        GlueStage stage;
        stage.contacts = batch.contacts;
        stage.share = batch.share;
        std::map<std::size_t, std::vector<std::size_t>> by_joint;
        std::map<std::size_t, double> share;
        for (const std::size_t c : batch.contacts) {
            const std::size_t joint = *prepared_.layout->contacts[c].joint;
            by_joint[joint].push_back(c);
            share[joint] += costs_[c].share;
            stage.time += costs_[c].spreading;
            stage.clamps += costs_[c].clamps;
        }
        const auto most = std::max_element(share.begin(), share.end(),
                                           [](const auto& a, const auto& b) { return a.second < b.second - 1e-12; });
        stage.subject = pair_subject(prepared_, prepared_.layout->contacts[by_joint[most->first].front()]);
        stage.glue = *piece_.joints[most->first].glue;
        for (const auto& [joint, contacts] : by_joint) {
            if (!stage.words.empty()) stage.words += " and ";
            stage.words += joint_words_of(contacts);
        }
        plan_.stages.push_back(std::move(stage));
    }

    /// "slat #1 to #5 / long rail: 10 joints".
    std::string joint_words_of(const std::vector<std::size_t>& contacts) const
    {
        std::set<int> numbers, others;
        const Contact& one = prepared_.layout->contacts[contacts.front()];
        const std::size_t part = piece_.copies[one.first].part;
        const std::size_t other = piece_.copies[one.second].part;
        for (const std::size_t c : contacts) {
            const Contact& contact = prepared_.layout->contacts[c];
            numbers.insert(piece_.copies[contact.first].number);
            others.insert(piece_.copies[contact.second].number);
        }
        // Which copies is said of one side only: of the one that is fewer in the stage than in the piece.
        const std::string which = numbers.size() < copies_of(part) ? " " + numbers_words(numbers) : "";
        const std::string onto = which.empty() && others.size() < copies_of(other) ? " " + numbers_words(others) : "";
        return fmt::format("{}{} / {}{}: {} joint{}", piece_.parts[part].id, which, piece_.parts[other].id, onto, contacts.size(),
                           contacts.size() == 1 ? "" : "s");
    }

    std::size_t copies_of(std::size_t part) const
    {
        return static_cast<std::size_t>(
            std::count_if(piece_.copies.begin(), piece_.copies.end(), [&](const Copy& copy) { return copy.part == part; }));
    }

    const Prepared& prepared_;
    const Piece& piece_;
    double comfort_;
    std::vector<ClosingCost> costs_;
    PutTogether together_;
    StagePlan plan_;
};

} // namespace

StagePlan plan_stages(const Prepared& prepared) { return StagePlanner(prepared).plan(); }

} // namespace jointwright
