#include "judging/fits/closed_tenon.hpp"

#include "judging/finding_tools.hpp"
#include "judging/fits/size_today.hpp"
#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kMicrometre = 1e-6; // m: less is rounding
constexpr double kFlush = 0.0015;    // m: an end and the boards' edge that were meant to be flush

/// A tenon across its width, in the piece.
struct Tongue {
    Axis axis = Axis::x;
    double lo = 0, hi = 0;
    bool stop_lo = false, stop_hi = false; ///< the mortise ends there
    double width() const { return hi - lo; }
};

std::optional<Tongue> tongue_of(const Contact& contact, const Box& mortised)
{
    std::optional<Tongue> tongue;
    for (const Patch& p : contact.patches) {
        if (p.role != Patch::Role::edge) continue;
        const Axis axis = main_axis_of(p.normal);
        const double at = p.bounds.middle(axis);
        if (!tongue) tongue = Tongue{axis, at, at};
        tongue->lo = std::min(tongue->lo, at);
        tongue->hi = std::max(tongue->hi, at);
    }
    if (!tongue) return std::nullopt;
    const std::size_t k = index_of(tongue->axis);
    tongue->stop_lo = mortised.lo[k] < tongue->lo - kTouch;
    tongue->stop_hi = mortised.hi[k] > tongue->hi + kTouch;
    return tongue;
}

/// What keeps the tenon in place along its width: glue or tight pegs between the two parts, also those of boards that it is glued to.
struct Hold {
    bool any = false, glue_throughout = false;
    double from = 0, to = 0; ///< the lowest and the highest place that stays put; outside the tenon the nearest one
};

Hold hold_of(const Ties& ties, const Contact& contact, const Joint& joint, const Tongue& tongue)
{
    const double middle = (tongue.lo + tongue.hi) / 2;
    Hold hold{false, joint.glue && !joint.glued, middle, middle};
    std::optional<double> outside;
    for (const Grip& g : ties.grips(contact.first, tongue.axis)) {
        if (g.partner != contact.second || !g.tight()) continue;
        const double at = g.middle();
        if (at < tongue.lo || at > tongue.hi) {
            if (!outside || std::abs(at - middle) < std::abs(*outside - middle)) outside = at;
            continue;
        }
        hold.from = hold.any ? std::min(hold.from, at) : at;
        hold.to = hold.any ? std::max(hold.to, at) : at;
        hold.any = true;
    }
    if (!hold.any && outside) {
        hold.any = true;
        hold.from = hold.to = *outside;
    }
    return hold;
}

/// The fit through the year. Room counts both ends together, as twice that of the tighter end where the tenon is held.
struct TenonYear {
    double dry = 0, damp = 0; ///< strain of the tenon less that of its mortise
    double arm = 0;           ///< from the held place out to the end with the less room; half of the width where it is free
    double clearance = 0;     ///< at either end
    double gap(double strain) const { return 2 * (clearance - strain * arm); }
    /// How far an end at this arm moves towards its stop; one on the near side of the held place does so when it shrinks.
    double reach(double at) const { return std::max({0.0, dry * at, damp * at}); }
    double least() const { return std::min({gap(0), gap(dry), gap(damp)}); }
};

TenonYear year_of(const Prepared& prepared, const Ties& ties, const Contact& contact, const Joint& joint, const Tongue& tongue,
                  const Hold& hold)
{
    const Piece& piece = *prepared.piece;
    const PartState& out = prepared.state_of(contact.second);
    TenonYear y;
    const SeasonalStrains tenon = ties.body_strain(contact.first, tongue.axis);
    y.dry = tenon.dry - strain_in_space(piece, contact.second, out.dry, tongue.axis);
    y.damp = tenon.damp - strain_in_space(piece, contact.second, out.damp, tongue.axis);
    y.clearance = in_metres(joint.clearance);
    y.arm = tongue.width() / 2;
    if (!hold.any) return y;
    const double low = hold.from - tongue.lo, high = tongue.hi - hold.to;
    y.arm = !tongue.stop_hi || (tongue.stop_lo && y.reach(low) >= y.reach(high)) ? low : high;
    return y;
}

/// Least travel left at the pegs in slots; nothing where there are none.
std::optional<double> peg_room(const Prepared& prepared, std::size_t index, const Tongue& tongue, const Hold& hold,
                               const TenonYear& year)
{
    const auto row = fastener_row(prepared, index);
    if (!row || !row->slot || row->through == tongue.axis) return std::nullopt;
    std::optional<double> least;
    for (const Fastener& f : row->fasteners) {
        const double slack = row->slack(f, tongue.axis);
        if (slack == 0 || !std::isfinite(slack)) continue;
        const double at = f.at[index_of(tongue.axis)], from = std::clamp(at, hold.from, hold.to);
        const double left = slack - std::abs(at - from) * std::max(std::abs(year.dry), std::abs(year.damp));
        if (!least || left < *least) least = left;
    }
    return least;
}

/// How far the boards stand past the end of the part that they are let into, at the farther edge.
struct Proud {
    double damp = 0, dry = 0;
};

std::optional<Proud> proud_of(const Prepared& prepared, const Ties& ties, const Contact& contact, const Tongue& tongue,
                              const Hold& hold, const TenonYear& year)
{
    if (!runs_along(*prepared.piece, contact.second, tongue.axis)) return std::nullopt;
    const std::size_t k = index_of(tongue.axis);
    const Box& boards = ties.body_of(contact.first).box;
    const Box& end = ties.box_of(contact.second);
    if (std::abs(boards.lo[k] - end.lo[k]) > kFlush || std::abs(boards.hi[k] - end.hi[k]) > kFlush) return std::nullopt;
    const double arm = std::max(hold.from - boards.lo[k], boards.hi[k] - hold.to);
    return Proud{std::max(year.dry, year.damp) * arm, std::min(year.dry, year.damp) * arm};
}

struct Fit {
    const Contact& contact;
    const Joint& joint;
    Tongue tongue;
    Hold hold;
    TenonYear year;
    double wanted = 0;        ///< both ends together
    double room_each_end = 0; ///< to cut today
    std::optional<double> pegs;
    bool stated() const { return joint.clearance != Length{} && !hold.glue_throughout; }
    double squeeze() const
    {
        const double arm = std::abs(year.arm); // none where it is held at its very end
        return stated() && arm > kMicrometre ? std::max(0.0, -year.least() / 2) / arm : 0;
    }
};

std::string room_words(const Prepared& prepared, const Fit& fit)
{
    const int ends = (fit.tongue.stop_lo ? 1 : 0) + (fit.tongue.stop_hi ? 1 : 0);
    const std::string each = write_length_up(metres(fit.room_each_end), prepared.units);
    if (ends == 1) return fmt::format("cut the mortise {} longer than the tenon at its closed end", each);
    return fmt::format("cut the mortise {} long today, {} beyond the tenon at either end",
                       size_words(prepared, fit.tongue.width() + 2 * fit.room_each_end), each);
}

void judge(const Prepared& prepared, const Fit& fit, Finding& f)
{
    const std::string& a = prepared.piece->part_of(fit.contact.first).id;
    const std::string& b = prepared.piece->part_of(fit.contact.second).id;
    const double crush = prepared.facts->number("squeeze_fail").value, least = fit.year.least();
    const std::string grows = small_words(prepared, fit.year.reach(fit.year.arm) * 2);
    if (fit.hold.glue_throughout) {
        f.headline =
            fmt::format("The tenon of {} in {} is held across its width by its glue; so that its edges do not press on the "
                        "ends of the mortise, {}.",
                        a, b, room_words(prepared, fit));
    } else if (!fit.stated()) {
        f.headline = fmt::format("The tenon of {} swells {} across its width in {}; no clearance is stated, so {}.", a, grows, b,
                                 room_words(prepared, fit));
    } else if (fit.squeeze() > 0) {
        f.verdict = fit.squeeze() > crush ? Verdict::fail : Verdict::warn;
        f.headline =
            fmt::format("The tenon of {} swells {} more than its mortise in {} leaves: {}.", a, small_words(prepared, -least), b,
                        f.verdict == Verdict::fail ? "it is crushed or bursts the end of the mortise"
                                                   : "it presses on the end of the mortise");
    } else if (least < fit.wanted - kMicrometre) {
        f.verdict = Verdict::warn;
        f.headline = fmt::format("The tenon of {} keeps only {} of room across its width in {} at its tightest.", a,
                                 small_words(prepared, least), b);
    } else {
        f.headline = fmt::format("The tenon of {} keeps {} of room across its width in {} at its tightest.", a,
                                 small_words(prepared, least), b);
    }
    if (f.verdict != Verdict::pass) f.remedy = room_words(prepared, fit);
    if (fit.pegs && *fit.pegs < -kMicrometre) {
        if (f.verdict == Verdict::pass) f.verdict = Verdict::warn;
        f.headline.pop_back();
        f.headline += fmt::format("; its pegs reach the ends of their slots, {} too soon.", small_words(prepared, -*fit.pegs));
        f.remedy.besides(std::string(f.remedy ? "and " : "") + "mill the slots as long as slot-length says");
    }
    if (fit.stated())
        f.utilisation =
            fit.squeeze() > 0 ? 1 + fit.squeeze() / crush : std::clamp((fit.year.gap(0) - least) / fit.year.gap(0), 0.0, 1.0);
}

void add_working(const Prepared& prepared, const Fit& fit, const std::optional<Proud>& proud, Finding& f)
{
    const PartState& state = prepared.state_of(fit.contact.first);
    const std::string held = fit.hold.any ? "from where it is held" : "about its middle";
    const std::string made =
        fmt::format("c0 = {}, s = {}", small_words(prepared, fit.year.gap(0)), size_words(prepared, std::abs(fit.year.arm)));
    const char* as_cut = fit.stated() ? "" : ", the mortise cut as told below";
    f.working.push_back({"Room at the dampest, both ends together; the tenon moves " + held + as_cut,
                         "c = c0 − 2 (ε − ε_mortise) s", fmt::format("{}, ε − ε_mortise = {:.5f}", made, fit.year.damp),
                         fit.year.gap(fit.year.damp), "m", "geometry"});
    f.working.push_back({"Room at the driest", "c = c0 − 2 (ε − ε_mortise) s",
                         fmt::format("{}, ε − ε_mortise = {:.5f}", made, fit.year.dry), fit.year.gap(fit.year.dry), "m",
                         "geometry"});
    if (fit.squeeze() > 0) {
        const Datum<double>& crush = prepared.facts->number("squeeze_fail");
        f.working.push_back({"Strain of the pressed tenon", "e = −c/(2 s)",
                             fmt::format("s = {}", size_words(prepared, std::abs(fit.year.arm))), fit.squeeze(), "1",
                             "geometry"});
        f.working.push_back({"Strain beyond which it is crushed", "e_crush", "", crush.value, "1", crush.cite.text()});
    }
    if (proud)
        f.working.push_back(
            {"How far the boards stand past the end at the dampest, at either edge (at the driest they fall short)",
             "(ε − ε_end) s", fmt::format("at the driest {}", small_words(prepared, proud->dry)), proud->damp, "m", "geometry"});
    const Datum<double>& wanted = prepared.facts->number("wanted_clearance");
    f.working.push_back({"Room that should be left, both ends together", "c_wanted", "", wanted.value, "m", wanted.cite.text()});
    if (!runs_along(*prepared.piece, fit.contact.first, fit.tongue.axis))
        for (WorkingStep& step : movement_working(*prepared.facts, std::get<MovementLaw>(state.movement),
                                                  rings_along(prepared, fit.contact.first, fit.tongue.axis),
                                                  metres(fit.tongue.width()), state.made, state.dampest))
            f.working.push_back(std::move(step));
}

Finding finding_of(const Prepared& prepared, const Fit& fit, const std::optional<Proud>& proud)
{
    const Part& inner = prepared.piece->part_of(fit.contact.first);
    const PartState& state = prepared.state_of(fit.contact.first);
    Finding f;
    f.check = "bind";
    f.subject = pair_subject(prepared, fit.contact);
    f.where =
        fmt::format("{}, {}, {}", pair_place(prepared, fit.contact), direction_words(inner, fit.tongue.axis), state.species);
    f.about.copies = {fit.contact.first, fit.contact.second};
    f.weight = fit.room_each_end;
    judge(prepared, fit, f);
    if (proud) {
        f.headline.pop_back();
        f.headline +=
            fmt::format("; {} stands {} past {} at the dampest and falls {} short of it at the driest, at either edge.", inner.id,
                        small_words(prepared, std::max(0.0, proud->damp)), prepared.piece->part_of(fit.contact.second).id,
                        small_words(prepared, std::max(0.0, -proud->dry)));
    }
    f.values = {{"gap_made", fit.year.gap(0), "m"},
                {"gap_driest", fit.year.gap(fit.year.dry), "m"},
                {"gap_dampest", fit.year.gap(fit.year.damp), "m"},
                {"squeeze", fit.squeeze(), "1"}};
    if (fit.pegs) f.values.push_back({"peg_travel_left", *fit.pegs, "m"});
    if (proud) {
        f.values.push_back({"stands_past_dampest", proud->damp, "m"});
        f.values.push_back({"stands_past_driest", proud->dry, "m"});
    }
    add_moistures(f, state);
    add_working(prepared, fit, proud, f);
    add_size_today(f, state,
                   {"room_each_end_today", "room between tenon and mortise at either closed end, across the width",
                    "c_wanted/2 + swelling at that end",
                    fmt::format("mortise {} long", size_words(prepared, fit.tongue.width() + 2 * fit.room_each_end)),
                    fit.room_each_end});
    gather_sources(f);
    return f;
}

} // namespace

std::optional<Finding> judge_tenon_fit(const Prepared& prepared, const Ties& ties, std::size_t index)
{
    const Piece& piece = *prepared.piece;
    const Contact& contact = prepared.layout->contacts[index];
    const Joint& joint = piece.joints[*contact.joint];
    const Part& inner = piece.part_of(contact.first);
    const Part& outer = piece.part_of(contact.second);
    if (inner.turn || outer.turn) return std::nullopt;
    const std::string subject = pair_subject(prepared, contact);
    if (!joint.tenon) {
        if (joint.glue) return std::nullopt; // cross-grain asks for the sizes
        return cannot_tell(
            "bind", subject,
            fmt::format("Whether the tenon of {} binds in {} cannot be told: its sizes are missing.", inner.id, outer.id),
            "tenon = { length = ..., width = ..., thickness = ... }");
    }
    const auto tongue = tongue_of(contact, ties.box_of(contact.second));
    if (!tongue || (!tongue->stop_lo && !tongue->stop_hi)) return std::nullopt;
    const Hold hold = hold_of(ties, contact, joint, *tongue);
    if (!hold.any && !(tongue->stop_lo && tongue->stop_hi)) return std::nullopt; // it shifts towards its open end
    const PartState& in = prepared.state_of(contact.first);
    const PartState& out = prepared.state_of(contact.second);
    if (!in.moves() || !out.moves())
        return cannot_tell("bind", subject,
                           fmt::format("Whether the tenon of {} binds in {} cannot be told: {}.", inner.id, outer.id,
                                       in.moves() ? out.missing_movement() : in.missing_movement()),
                           "");
    Fit fit{contact, joint, *tongue, hold, year_of(prepared, ties, contact, joint, *tongue, hold), 0, 0, std::nullopt};
    fit.wanted = prepared.facts->number("wanted_clearance").value;
    fit.room_each_end =
        in_metres(round_up_to_milling_step(metres(fit.year.reach(fit.year.arm) + fit.wanted / 2), prepared.units));
    if (!fit.stated()) fit.year.clearance = fit.room_each_end; // cut as the finding says
    fit.pegs = peg_room(prepared, index, *tongue, hold, fit.year);
    return finding_of(prepared, fit, proud_of(prepared, ties, contact, *tongue, hold, fit.year));
}

} // namespace jointwright
