// Whether the joints can be closed while their glue is open, in one go or in stages that can go together.

#include "bond/glue/open_time.hpp"
#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joints/glue_stages.hpp"
#include "judging/joints/pressed_face.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace jointwright {

namespace {

/// Time to spread and close the longest stage [s].
double longest_of(const StagePlan& plan)
{
    double longest = 0;
    for (const GlueStage& stage : plan.stages) longest = std::max(longest, stage.time);
    return longest;
}

constexpr std::size_t kMostShown = 12; // stages listed one by one

int rank_of(const std::string& wet_use) { return wet_use == "wet" ? 2 : wet_use == "damp" ? 1 : 0; }

std::string minutes_words(double time)
{
    if (time < 90) return fmt::format("{} s", write_number(time, 2));
    return fmt::format("{} min", write_number(time / 60, 2));
}

/// "1. side rail / leg: 2 joints; 2. …", cut after some.
std::string stages_words(const std::vector<GlueStage>& stages)
{
    std::string words;
    std::size_t shown = 0;
    for (std::size_t i = 0; i < stages.size(); ++i) {
        if (shown++ == kMostShown) return words + fmt::format("; and {} more", stages.size() - i);
        words += fmt::format("{}{}. {}", i ? "; " : "", i + 1, stages[i].words);
    }
    return words;
}

/// Glues as good in damp that stay open long enough for a stage, the quickest of them first.
std::vector<std::string> slower_glues(const Prepared& prepared, const GlueRecord& than, double share)
{
    std::vector<std::pair<double, std::string>> found;
    const double needed = share * than.open_time->value;
    for (const Listing& listing : prepared.facts->glues()) {
        const GlueRecord* glue = prepared.facts->find_glue(listing.name);
        if (!glue || !glue->open_time || (glue->pressure && !glue->gap_filling) || rank_of(glue->wet_use) < rank_of(than.wet_use))
            continue;
        const auto times = glue_times(*glue, prepared.piece->room.shop);
        if (in_seconds(times->open) >= needed) found.emplace_back(in_seconds(times->open), glue->name);
    }
    std::sort(found.begin(), found.end());
    std::vector<std::string> names;
    for (const auto& [open, name] : found) {
        if (names.size() == 3) break;
        names.push_back(fmt::format("{} ({})", name, minutes_words(open)));
    }
    return names;
}

Remedy remedy_for_stage(const Prepared& prepared, const GlueStage& worst, const GlueRecord& glue, double shop_open)
{
    Remedy remedy;
    const auto names = slower_glues(prepared, glue, worst.share * shop_open / glue.open_time->value);
    if (!names.empty()) remedy.add(fmt::format("use a glue that stays open longer, such as {}", fmt::join(names, " or ")));
    if (glue.warmer_time && glue.warmer_time->value < 1 && glue.coldest &&
        prepared.piece->room.shop.celsius() > glue.coldest->value + 4)
        remedy.add(fmt::format("work in a cooler shop, not below {} °C", write_number(glue.coldest->value, 2)));
    remedy.add("get a second pair of hands");
    return remedy;
}

void add_working(const Prepared& prepared, const StagePlan& plan, const GlueStage& worst, const GlueRecord& glue, Finding& f)
{
    const Facts& facts = *prepared.facts;
    const Datum<double>& shaped = facts.number("assembly_shaped_joint");
    glue_times(glue, prepared.piece->room.shop, &f.working);
    if (glue.closed_time)
        f.working.push_back({"Closed time at 20 °C, from closing to pressure", "t20", "", glue.closed_time->value, "s",
                             glue.closed_time->cite.text()});
    f.working.push_back({"Spreading and closing all joints one after the other", "t = Σ (t_joint + A t_area)",
                         fmt::format("{} s a tenon, dowel, bridle or dovetail, {} s a plain face or housing, {} s a square metre",
                                     write_number(shaped.value, 3), write_number(facts.number("assembly_plain_joint").value, 3),
                                     write_number(facts.number("assembly_spreading").value, 3)),
                         plan.whole_time, "s", shaped.cite.text()});
    f.working.push_back({"Smallest stages that can go together, and of these the longest", "t_stage",
                         fmt::format("{}; what can leave in one direction together", worst.words), worst.time, "s",
                         facts.cite("wilson-latombe-1994", "blocking graphs") + " (from memory)"});
    const GlueTimes times = *glue_times(glue, prepared.piece->room.shop);
    f.working.push_back({"Share of the open time, or with the clamps of the time to full pressure, whichever is more",
                         "u = t/t_open or (t + t_clamps)/(t_open + t_closed), added up joint by joint",
                         fmt::format("t = {} s, t_clamps = {} s, t_open = {} s, t_closed = {} s", write_number(worst.time, 3),
                                     write_number(worst.clamps, 3), write_number(in_seconds(times.open), 3),
                                     write_number(in_seconds(times.closed), 3)),
                         worst.share, "1", "mechanics"});
}

/// Glue to mix or to have at hand, by glue.
double mass_of_all_glue(const Prepared& prepared)
{
    double mass = 0;
    for (const Contact& contact : prepared.layout->contacts) {
        if (!has_glue(prepared, contact)) continue;
        const Joint& joint = prepared.piece->joints[*contact.joint];
        const GlueRecord* glue = prepared.facts->find_glue(*joint.glue);
        if (!glue) continue;
        if (const auto m = glue_quantity(*prepared.facts, *glue, square_metres(spread_area(contact, joint)))) mass += m->value();
    }
    for (const Copy& copy : prepared.piece->copies) {
        const Part& part = prepared.piece->parts[copy.part];
        const GlueRecord* glue = part.glued_up && part.glued_up->glue ? prepared.facts->find_glue(*part.glued_up->glue) : nullptr;
        if (!glue) continue;
        const double area = in_metres(part.length) * in_metres(part.thickness) * (part.glued_up->boards - 1);
        if (const auto m = glue_quantity(*prepared.facts, *glue, square_metres(area))) mass += m->value();
    }
    return mass;
}

/// More parts than the stages are worked out for: advice is missing, no more.
Finding too_many_parts(const Prepared& prepared, const StagePlan& plan)
{
    Finding f;
    f.check = "assembly-time";
    f.subject = prepared.piece->parts.front().id;
    for (const Contact& c : prepared.layout->contacts)
        if (has_glue(prepared, c)) {
            f.subject = pair_subject(prepared, c);
            break;
        }
    f.verdict = Verdict::warn;
    f.headline = fmt::format("{} glued joints among {} parts are more than the stages are worked out for.", plan.joints,
                             prepared.piece->copies.size());
    f.remedy = "glue up one unit of the piece at a time, and check one unit by itself";
    return f;
}

} // namespace

std::vector<Finding> check_assembly_time(const Prepared& prepared)
{
    const StagePlan plan = plan_stages(prepared);
    if (plan.joints == 0) return {};
    if (plan.too_many) return {too_many_parts(prepared, plan)};
    if (plan.stages.empty()) return {};
    const GlueStage& worst = *std::max_element(plan.stages.begin(), plan.stages.end(),
                                               [](const GlueStage& a, const GlueStage& b) { return a.share < b.share - 1e-9; });
    const GlueRecord& glue = *prepared.facts->find_glue(worst.glue);
    const GlueTimes times = *glue_times(glue, prepared.piece->room.shop);
    Finding f;
    f.check = "assembly-time";
    f.subject = worst.subject;
    f.where = worst.words;
    if (worst.share > 1)
        f.verdict = Verdict::warn; // advice: a glue-up that is too long for one pair of hands is no fault of the piece
    const std::string open = minutes_words(in_seconds(times.open)), list = stages_words(plan.stages);
    if (f.verdict != Verdict::pass) {
        f.headline =
            fmt::format("{} stays open for {}; {} must close together and take about {}, {} with the clamps{}.", glue.name, open,
                        worst.words, minutes_words(worst.time), minutes_words(worst.time + worst.clamps),
                        worst.contacts.size() > 1 || worst.edges > 1 ? ", however the glue-up is split" : "");
        f.remedy = remedy_for_stage(prepared, worst, glue, in_seconds(times.open));
        if (plan.stages.size() > 1) f.remedy.note("the stages: " + list);
    } else if (plan.stages.size() == 1) {
        f.headline = fmt::format("{} can be closed in one go, in about {} of the {} that {} stays open.",
                                 plan.joints == 1   ? "The only glued joint"
                                 : plan.joints == 2 ? "Both glued joints"
                                                    : fmt::format("All {} glued joints", plan.joints),
                                 minutes_words(worst.time), open, glue.name);
    } else {
        f.headline = fmt::format("Glue up in {} stages, none longer than {} of the {} that {} stays open: {}.",
                                 plan.stages.size(), minutes_words(longest_of(plan)), open, glue.name, list);
    }
    f.values = {{"open_time", in_seconds(times.open), "s"},
                {"longest_stage", worst.time, "s"},
                {"longest_stage_to_pressure", worst.time + worst.clamps, "s"},
                {"share_of_open_time", worst.share, "1"},
                {"all_at_once", plan.whole_time, "s"},
                {"stages", static_cast<double>(plan.stages.size()), "1"},
                {"joints", static_cast<double>(plan.joints), "1"},
                {"clamp_time", in_seconds(times.clamped), "s"},
                {"glue_mass", mass_of_all_glue(prepared), "kg"}};
    add_working(prepared, plan, worst, glue, f);
    gather_sources(f);
    return {f};
}

} // namespace jointwright
