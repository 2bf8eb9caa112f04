#include "review/content/merge.hpp"

#include "checks/woods/species_unsure.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joints/joint_demand.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/structure/wall_screws.hpp"
#include "review/content/doubts.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace jointwright {

namespace {

std::string grain_words(Axis grain)
{
    switch (grain) {
    case Axis::x: return "left to right";
    case Axis::y: return "front to back";
    case Axis::z: return "upright";
    }
    return "";
}

std::string wood_words(const WoodChoice& wood)
{
    if (wood.species.empty()) return wood.id;
    std::string words;
    for (std::size_t i = 0; i < wood.species.size(); ++i) words += (i ? " or " : "") + wood.species[i];
    return words;
}

/// The run whose pieces weigh most.
const Prepared& heaviest(const std::vector<CombinationFindings>& runs)
{
    const CombinationFindings* best = &runs.front();
    for (const CombinationFindings& run : runs)
        if (run.prepared->whole_mass() > best->prepared->whole_mass()) best = &run;
    return *best->prepared;
}

} // namespace

/// Begins with a capital and ends with a full stop.
static std::string as_sentence(std::string line)
{
    if (line.empty()) return line;
    const bool is_key =
        line.substr(0, line.find(' ')).find('_') != std::string::npos; // of the design file, written as it is there
    if (!is_key && line.front() >= 'a' && line.front() <= 'z') line.front() = static_cast<char>(line.front() - 'a' + 'A');
    if (line.back() != '.') line += '.';
    return line;
}

/// Whom a subject may mean: each part by its id, each pair of parts by the contacts between their copies.
static std::map<std::string, About> all_subjects(const Piece& piece, const Prepared& prepared)
{
    std::map<std::string, About> subjects;
    for (std::size_t p = 0; p < piece.parts.size(); ++p) subjects[piece.parts[p].id].parts = {p};
    for (const Contact& contact : prepared.layout->contacts) {
        About& about = subjects[pair_subject(prepared, contact)];
        about.parts = {piece.copies[contact.first].part, piece.copies[contact.second].part};
        if (contact.joint && std::find(about.joints.begin(), about.joints.end(), *contact.joint) == about.joints.end())
            about.joints.push_back(*contact.joint);
    }
    return subjects;
}

/// Two parts that are judged together and do not touch, as the last of a row and what stands beside it.
static About pair_apart(const Piece& piece, const std::string& subject)
{
    for (std::size_t a = 0; a < piece.parts.size(); ++a)
        if (const std::string& id = piece.parts[a].id; subject.starts_with(id + " / "))
            for (std::size_t b = 0; b < piece.parts.size(); ++b)
                if (subject.compare(id.size() + 3, std::string::npos, piece.parts[b].id) == 0) {
                    About about;
                    about.parts = {a, b};
                    return about;
                }
    return {};
}

std::vector<Finding> merge_combinations(const Piece& piece, const std::vector<CombinationFindings>& runs)
{
    std::vector<Finding> merged;
    for (std::size_t i = 0; i < runs.size(); ++i)
        for (Finding f : runs[i].findings) {
            const CombinationFindings& run = runs[i];
            f.about.combination = i;
            const std::string& words = run.prepared->combination.words;
            if (!words.empty() && f.where && f.where->find(words) == std::string::npos) f.where = *f.where + " [" + words + "]";
            keep_worst(merged, std::move(f));
        }
    const std::map<std::string, About> subjects = all_subjects(piece, *runs.front().prepared);
    for (Finding& f : merged) {
        const auto found = subjects.find(f.subject);
        const About whom = found != subjects.end() ? found->second : pair_apart(piece, f.subject);
        f.about.parts = whom.parts;
        f.about.joints = whom.joints;
    }
    for (Finding& f : check_species_unsure(piece, runs)) merged.push_back(std::move(f));
    sort_findings(merged);
    return merged;
}

void describe_piece(ReportContent& content, const Piece& piece, const Layout& layout,
                    const std::vector<CombinationFindings>& runs)
{
    const Prepared& prepared = heaviest(runs);
    content.piece_name = piece.name;
    content.use = std::string(name_of(piece.use));
    if (prepared.masses_known()) content.mass_kg = prepared.whole_mass();
    content.room_name = piece.room.name;
    content.room_year = piece.room.year;
    content.moisture_driest_pct = prepared.parts.front().driest.percent();
    content.moisture_dampest_pct = prepared.parts.front().dampest.percent();
    content.moisture_at_glue_up_pct = piece.room.at_glue_up.percent();
    for (std::size_t p = 0; p < piece.parts.size(); ++p) {
        const Part& part = piece.parts[p];
        PartLine line;
        line.id = part.id;
        line.copies = 0;
        for (std::size_t i = 0; i < piece.copies.size(); ++i)
            if (piece.copies[i].part == p) {
                if (line.copies++ == 0 && prepared.state_of(i).loaded.density) line.mass_kg = prepared.masses[i];
            }
        line.length_m = in_metres(part.length);
        line.width_m = in_metres(part.width);
        line.thickness_m = in_metres(part.thickness);
        line.wood = wood_words(piece.woods[part.wood]);
        line.grain = grain_words(part.grain);
        content.parts.push_back(std::move(line));
    }
    std::vector<int> places(piece.joints.size(), 0);
    for (const Contact& c : layout.contacts) {
        ContactLine line;
        line.first = piece.label(c.first);
        line.second = piece.label(c.second);
        if (c.joint) {
            const Joint& joint = piece.joints[*c.joint];
            line.joint = std::string(name_of(joint.kind));
            line.glue = joint.glue;
            ++places[*c.joint];
        }
        line.area_m2 = c.area();
        if (const auto angle = c.grain_angle())
            line.grain_angle_deg = std::round(*angle * 180 / 3.14159265358979323846 * 1e6) / 1e6;
        content.contacts.push_back(std::move(line));
    }
    for (std::size_t j = 0; j < piece.joints.size(); ++j) {
        const Joint& joint = piece.joints[j];
        content.joints.push_back({joint.first, joint.second, std::string(name_of(joint.kind)), joint.glue, places[j]});
    }
}

namespace {

/// What the wall has to hold: a part of each name, its worst screw.
template <class Add>
void add_wall_screws(const Prepared& prepared, const Add& add)
{
    std::map<std::size_t, WallScrew> worst; // by part
    for (const WallScrew& w : prepared.statics.on_wall) {
        WallScrew& known = worst[prepared.piece->copies[w.copy].part];
        if (w.pull + w.across > known.pull + known.across) known = w;
    }
    for (const auto& [part, w] : worst)
        add(fmt::format("{} is screwed to the wall at its ends and every {} between: its worst screw gets a pull of {} and {} "
                        "across, with {}; "
                        "screw, plug and wall are not judged here",
                        prepared.piece->parts[part].id, write_length(metres(kWallStep), prepared.units),
                        write_force(newtons(w.pull), prepared.units), write_force(newtons(w.across), prepared.units),
                        prepared.statics.cases.cases[w.load_case].name));
}

} // namespace

std::vector<std::string> assumptions_of(const Piece& piece, const std::vector<CombinationFindings>& runs)
{
    std::vector<std::string> all = doubts_about_sizes(*runs.front().prepared);
    all.insert(all.end(), piece.assumed.begin(), piece.assumed.end());
    const auto add = [&](std::string line) {
        if (std::find(all.begin(), all.end(), line) == all.end()) all.push_back(std::move(line));
    };
    for (const CombinationFindings& run : runs)
        for (const std::string& line : run.prepared->statics.cases.assumed) add(line);
    const bool joints_judged = std::any_of(runs.begin(), runs.end(), [](const CombinationFindings& run) {
        return std::any_of(run.findings.begin(), run.findings.end(),
                           [](const Finding& f) { return f.check == "joint-capacity" && f.utilisation; });
    });
    if (joints_judged)
        for (const std::string& line : joint_demand_assumptions(*runs.front().prepared)) add(line);
    if (std::any_of(piece.joints.begin(), piece.joints.end(),
                    [](const Joint& joint) { return joint.kind == JointKind::buttons; }))
        add("each button is held by one number 8 wood screw, 16 mm deep");
    const bool loaded = piece.use != Use::none && piece.use != Use::panel;
    if (loaded) add("every board is straight-grained and clear of knots where it is stressed");
    if (bears_something(piece.use)) {
        if (piece.wall.empty())
            add("the piece stands on a level floor on all its feet, and a foot holds sideways a quarter of what presses on it");
    }
    for (const CombinationFindings& run : runs) add_wall_screws(*run.prepared, add);
    for (const CombinationFindings& run : runs)
        for (const Finding& f : run.findings)
            if (f.check == "bind" && !f.utilisation && finding_value(f, "room_each_end_today"))
                add("where no clearance is stated, mortises are cut longer than their tenons are wide, as bind says");
    std::set<std::string> estimated;
    for (const CombinationFindings& run : runs)
        for (const PartState& s : run.prepared->parts) {
            if ((s.loaded.bending_strength && s.loaded.bending_strength->estimated) ||
                (s.loaded.shear && s.loaded.shear->estimated) || (s.loaded.tension_across && s.loaded.tension_across->estimated))
                estimated.insert(fmt::format("some strengths of {} are estimated from its specific gravity", s.species));
            if (!s.record && s.loaded.compression_along && s.loaded.compression_along->estimated)
                estimated.insert(fmt::format("strength of {} along its grain is estimated from its other values", s.species));
            if (s.usual.modulus_tangential && s.usual.modulus_tangential->estimated)
                estimated.insert(fmt::format("stiffness of {} across the grain is estimated from a relative", s.species));
        }
    for (const std::string& line : estimated) add(line);
    for (const std::string& line : piece.unused) add(line);
    for (std::string& line : all) line = as_sentence(std::move(line));
    return all;
}

} // namespace jointwright
