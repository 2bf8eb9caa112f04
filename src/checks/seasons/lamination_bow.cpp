// Two layers glued with their grains parallel that move by unlike amounts: the pair bows, hollow on the layer that shrinks more.

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/fits/flatness.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"
#include "mechanics/seasons/bimetal.hpp"
#include "mechanics/seasons/glued_face.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kParallel = 0.1;     // rad: a little slope of grain does not make a crossed joint
constexpr double kLeastStrain = 1e-7; // a difference of a thousandth of a millimetre over 10 m
constexpr double kLeastRise = 1e-5;   // m: boards edge to edge differ over their thickness alone and have nothing to say

/// A laminated pair seen in one of its two directions, worked out for both seasons.
struct Bow {
    FaceDirection face;
    bool along = false;
    Restraint layers;
    double dry = 0, damp = 0; ///< rise, positive hollow on the first layer [m]
    double limit = 0, fail = 0;
    Citation limit_cite, fail_cite;
    double worst() const { return std::max(std::abs(dry), std::abs(damp)); }
    /// What holds the pair flat leaves only the verdict on what it would do free.
    double use() const { return worst() / (face.held_flat ? fail : limit); }
};

bool is_parallel_pair(const FaceDirection& face)
{
    return !face.core && face.patch->role == Patch::Role::face && face.patch->grain_angle &&
           *face.patch->grain_angle < kParallel && !face.crossed();
}

Curvature curvature_of(const Restraint& layers, double first, double second)
{
    return bow_curvature({layers.a.thickness, layers.a.modulus, first}, {layers.b.thickness, layers.b.modulus, second});
}

Bow bow_of(const Prepared& prepared, const FaceDirection& face, const Restraint& layers)
{
    Bow bow;
    bow.face = face;
    bow.along = !face.a.across();
    bow.layers = layers;
    bow.dry = in_metres(rise_over(curvature_of(layers, face.a.dry, face.b.dry), metres(face.length)));
    bow.damp = in_metres(rise_over(curvature_of(layers, face.a.damp, face.b.damp), metres(face.length)));
    if (bow.along) {
        const Datum<double>& most = prepared.facts->number("bow_along_most");
        const Datum<double>& fail = prepared.facts->number("bow_along_fail");
        bow.limit = face.length / most.value;
        bow.fail = face.length / fail.value;
        bow.limit_cite = most.cite;
        bow.fail_cite = fail.cite;
    } else {
        const Datum<double>& first = flatness_limit(prepared, prepared.piece->copies[face.a.copy].part);
        const Datum<double>& second = flatness_limit(prepared, prepared.piece->copies[face.b.copy].part);
        const Datum<double>& most = first.value <= second.value ? first : second;
        const Datum<double>& fail = prepared.facts->number("flatness_fail");
        bow.limit = most.value;
        bow.fail = fail.value;
        bow.limit_cite = most.cite;
        bow.fail_cite = fail.cite;
    }
    return bow;
}

Verdict verdict_of(const Bow& bow)
{
    if (bow.face.held_flat) return bow.worst() > bow.fail ? Verdict::warn : Verdict::pass;
    return bow.worst() > bow.fail ? Verdict::fail : bow.worst() > bow.limit ? Verdict::warn : Verdict::pass;
}

std::string direction_of(const Bow& bow) { return bow.along ? "along" : "across"; }

void add_steps(const Prepared& prepared, const Bow& bow, const WorseSeason& worse, Finding& f)
{
    const std::string a = prepared.piece->part_of(bow.face.a.copy).id, b = prepared.piece->part_of(bow.face.b.copy).id;
    const double first = worse.dry ? bow.face.a.dry : bow.face.a.damp, second = worse.dry ? bow.face.b.dry : bow.face.b.damp;
    const Layer &one = bow.layers.a, &two = bow.layers.b;
    for (const FaceSide& side : {bow.face.a, bow.face.b}) {
        const PartState& state = prepared.state_of(side.copy);
        const Part& part = prepared.piece->part_of(side.copy);
        if (!side.across()) continue;
        const bool through = main_axis_of(bow.face.direction) == part.face; // seen from its edge a flat-sawn part is quarter-sawn
        const Angle rings = through ? degrees(90) - state.rings : state.rings;
        for (WorkingStep& step : movement_working(*prepared.facts, std::get<MovementLaw>(state.movement), rings,
                                                  metres(bow.face.length), state.made, worse.dry ? state.driest : state.dampest))
            f.working.push_back(std::move(step));
    }
    f.working.push_back({fmt::format("Strain of {} less that of {} {} the grain, {}", b, a, direction_of(bow), worse.words()),
                         "Δε = ε2 − ε1", fmt::format("ε1 = {:.5f}, ε2 = {:.5f}", first, second), second - first, "1",
                         "plane strain transformation"});
    f.working.push_back({"Rise of the bow in its middle; positive hollow on the first layer",
                         "κ ℓ²/8, κ = 6 Δε (1 + m)²/(h [3 (1 + m)² + (1 + m n)(m² + 1/(m n))])",
                         fmt::format("t1 = {} mm, t2 = {} mm, E1 = {} GPa, E2 = {} GPa, ℓ = {} mm",
                                     write_number(in_millimetres(one.thickness), 4),
                                     write_number(in_millimetres(two.thickness), 4), write_number(one.modulus.value() * 1e-9, 3),
                                     write_number(two.modulus.value() * 1e-9, 3), write_number(bow.face.length * 1e3, 4)),
                         worse.dry ? bow.dry : bow.damp, "m", prepared.facts->cite("timoshenko-1925", "two bonded strips")});
    f.working.push_back(
        {"Bow that stays unnoticed", bow.along ? "length/500" : "rise ≤ limit", "", bow.limit, "m", bow.limit_cite.text()});
    f.working.push_back(
        {"Bow that spoils the pair", bow.along ? "length/100" : "rise > limit", "", bow.fail, "m", bow.fail_cite.text()});
}

/// One finding from the directions of one face, the worse one in its headline.
Finding judge(const Prepared& prepared, const std::vector<Bow>& bows)
{
    const Bow& bow = *std::max_element(bows.begin(), bows.end(), [](const Bow& a, const Bow& b) { return a.use() < b.use(); });
    const Contact& contact = prepared.layout->contacts[bow.face.contact];
    const std::string a = prepared.piece->part_of(contact.first).id, b = prepared.piece->part_of(contact.second).id;
    const PartState& sa = prepared.state_of(contact.first);
    const PartState& sb = prepared.state_of(contact.second);
    const WorseSeason worse = worse_season(sa, std::abs(bow.dry), std::abs(bow.damp));
    const double rise = worse.dry ? bow.dry : bow.damp;
    Finding f;
    f.check = "lamination-bow";
    f.subject = pair_subject(prepared, contact);
    f.verdict = verdict_of(bow);
    f.utilisation = bow.use();
    f.weight = bow.worst();
    f.where = fmt::format("{}, {} the grain, {}", pair_place(prepared, contact), direction_of(bow),
                          sa.species == sb.species ? sa.species : sa.species + " and " + sb.species);
    f.about.copies = {contact.first, contact.second};
    const std::string facts =
        fmt::format("{} over {} {} the grain {}, hollow on the side of {}", small_words(prepared, worse.amount),
                    size_words(prepared, bow.face.length), direction_of(bow), worse.words(), rise >= 0 ? a : b);
    f.headline = bow.face.held_flat
                     ? fmt::format("{} and {} pull at each other but are held flat; free they would bow {}.", a, b, facts)
                     : fmt::format("{} glued to {} bows {}.", a, b, facts);
    if (f.verdict != Verdict::pass)
        f.remedy = Remedy::either(
            {fmt::format("use one species cut alike for {} and {}, brought to the same moisture before gluing", a, b),
             fmt::format("glue a third layer like {} to the other face",
                         bow.layers.a.thickness < bow.layers.b.thickness ? a : b)});
    for (const Bow& each : bows) {
        f.values.push_back({fmt::format("rise_{}_driest", direction_of(each)), each.dry, "m"});
        f.values.push_back({fmt::format("rise_{}_dampest", direction_of(each)), each.damp, "m"});
        f.values.push_back({fmt::format("limit_{}", direction_of(each)), each.limit, "m"});
    }
    add_steps(prepared, bow, worse, f);
    gather_sources(f);
    return f;
}

/// True when two parts are of one wood, cut and moisture: whatever is not known of it, they move alike.
bool are_alike(const PartState& a, const PartState& b)
{
    return a.species == b.species && a.rings == b.rings && a.made == b.made;
}

std::optional<Finding> finding_for(const Prepared& prepared, const std::vector<FaceDirection>& directions)
{
    const Contact& contact = prepared.layout->contacts[directions.front().contact];
    const PartState& sa = prepared.state_of(contact.first);
    const PartState& sb = prepared.state_of(contact.second);
    const std::string pair =
        fmt::format("{} and {}", prepared.piece->part_of(contact.first).id, prepared.piece->part_of(contact.second).id);
    if (!sa.moves() || !sb.moves()) {
        if (are_alike(sa, sb)) return std::nullopt;
        return cannot_tell(
            "lamination-bow", pair_subject(prepared, contact),
            fmt::format("Whether {} bow cannot be told: {}.", pair, sa.moves() ? sb.missing_movement() : sa.missing_movement()),
            "name a wood of the table or give its movement under properties");
    }
    if (std::none_of(directions.begin(), directions.end(),
                     [](const FaceDirection& d) { return std::max(std::abs(d.dry), std::abs(d.damp)) > kLeastStrain; }))
        return std::nullopt;
    std::vector<Bow> bows;
    for (const FaceDirection& direction : directions) {
        std::string missing;
        const auto layers = restraint_at(prepared, direction, &missing);
        if (!layers)
            return cannot_tell("lamination-bow", pair_subject(prepared, contact),
                               fmt::format("How far {} bow cannot be told: {} is missing.", pair, missing),
                               "give [[wood]] properties from a test of your own, or a wood of the table");
        bows.push_back(bow_of(prepared, direction, *layers));
    }
    if (std::none_of(bows.begin(), bows.end(), [](const Bow& bow) { return bow.worst() > kLeastRise; })) return std::nullopt;
    return judge(prepared, bows);
}

} // namespace

std::vector<Finding> check_lamination_bow(const Prepared& prepared)
{
    std::vector<Finding> findings;
    std::vector<FaceDirection> directions; // of the face at hand
    const auto close_face = [&] {
        if (directions.empty()) return;
        if (auto finding = finding_for(prepared, directions)) keep_worst(findings, std::move(*finding));
        directions.clear();
    };
    for (const FaceDirection& face : glued_directions(prepared)) {
        if (!directions.empty() && directions.front().patch != face.patch) close_face();
        if (is_parallel_pair(face)) directions.push_back(face);
    }
    close_face();
    return findings;
}

} // namespace jointwright
