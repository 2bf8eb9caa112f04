// Whether the glue suits its place: damp, heat, woods that repel or stain, gaps, lasting load, the shop on the day.

#include "judging/finding.hpp"
#include "judging/finding_tools.hpp"
#include "judging/joints/glue_demand.hpp"
#include "measure/write.hpp"
#include "mechanics/prepared.hpp"
#include "wood/moisture_balance.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace jointwright {

namespace {

/// One objection, or one thing that was looked at and found in order.
struct GlueMatter {
    Verdict verdict = Verdict::pass;
    std::optional<double> use;
    std::string headline, remedy;
};

/// A glued face with its two parts; one of them twice for the boards of one part.
struct GluedPlace {
    const GlueRecord* glue = nullptr;
    std::string subject, place;
    std::size_t first = 0, second = 0; ///< parts
    std::optional<std::size_t> contact;
};

struct GlueLook {
    std::vector<GlueMatter> matters;
    Working working;
};

bool is_outdoors(const Prepared& prepared) { return prepared.piece->room.outdoors; }

double dampest_of(const Prepared& prepared, const GluedPlace& place)
{
    return std::max(prepared.parts[place.first].dampest.percent(), prepared.parts[place.second].dampest.percent());
}

/// Glues that stand so much damp, those that stand the most first, for the remedy.
std::string glues_for(const Prepared& prepared, std::string_view at_least)
{
    std::vector<std::string> names;
    const auto take = [&](std::string_view wet_use) {
        for (const Listing& listing : prepared.facts->glues()) {
            const GlueRecord* glue = prepared.facts->find_glue(listing.name);
            if (glue && glue->wet_use == wet_use && !(glue->indoors_only && is_outdoors(prepared)) && names.size() < 5)
                names.push_back(glue->name);
        }
    };
    take("wet");
    if (at_least != "wet") take(at_least);
    return fmt::format("{}", fmt::join(names, "; "));
}

void look_at_damp(const Prepared& prepared, const GluedPlace& place, GlueLook& look)
{
    const GlueRecord& glue = *place.glue;
    const Datum<double>& d1 = prepared.facts->number("moisture_class_d1");
    const Datum<double>& d2 = prepared.facts->number("moisture_class_d2");
    const Datum<double>& rain = prepared.facts->number("moisture_wetted");
    const double dampest = dampest_of(prepared, place) / 100; // as shares, like the limits
    const bool outdoors = is_outdoors(prepared);
    GlueMatter m;
    if (glue.wet_use == "dry") {
        m.use = dampest / d1.value;
        look.working.push_back({"Moisture content that a glue for dry rooms stands, against the dampest season",
                                "u = M_dampest/15", fmt::format("M = {}", write_percent(dampest * 100)), *m.use, "1",
                                d1.cite.text()});
        if (outdoors || dampest > d2.value) {
            m.verdict = Verdict::fail;
            m.headline =
                fmt::format("{} is a glue for dry rooms; {} it softens and lets go.", glue.name,
                            outdoors ? "in the open air" : fmt::format("at {} of moisture", write_percent(dampest * 100)));
            if (*m.use <= 1) m.use.reset(); // the place, not the figure, decides
        } else if (dampest > d1.value) {
            m.verdict = Verdict::warn;
            m.headline = fmt::format("{} is a glue for dry rooms; at {} of moisture in the damp season it weakens.", glue.name,
                                     write_percent(dampest * 100));
        }
        if (m.verdict != Verdict::pass) m.remedy = "use one of these: " + glues_for(prepared, "damp");
    } else if (glue.wet_use == "damp") {
        m.use = dampest / rain.value;
        look.working.push_back({"Moisture content beyond which rain must have wetted the wood, against the dampest season",
                                "u = M_dampest/24", fmt::format("M = {}", write_percent(dampest * 100)), *m.use, "1",
                                rain.cite.text()});
        if (glue.indoors_only && outdoors) {
            m.verdict = Verdict::fail;
            m.use.reset();
            m.headline = fmt::format("{} is no glue for the open air, not even under a roof.", glue.name);
            m.remedy = "use one of these: " + glues_for(prepared, "damp");
        } else if (dampest > rain.value) {
            m.verdict = Verdict::warn;
            m.headline = fmt::format("{} bears damp air and short wetting, not wood that rain wets to {}.", glue.name,
                                     write_percent(dampest * 100));
            m.remedy = "use one of these: " + glues_for(prepared, "wet");
        }
    }
    look.matters.push_back(std::move(m));
}

double warmest_of(const Season& season)
{
    const auto* air = std::get_if<AirState>(&season);
    return air ? air->temperature.celsius() : 20;
}

void look_at_heat(const Prepared& prepared, const GluedPlace& place, GlueLook& look)
{
    const GlueRecord& glue = *place.glue;
    if (!glue.hottest) return;
    const double warmest = std::max(warmest_of(prepared.piece->room.driest), warmest_of(prepared.piece->room.dampest));
    const double margin = prepared.facts->number("heat_margin").value;
    GlueMatter m;
    if (warmest > glue.hottest->value) {
        m.verdict = Verdict::fail;
        m.headline = fmt::format("{} softens from about {} °C; the room reaches {} °C.", glue.name,
                                 write_number(glue.hottest->value, 3), write_number(warmest, 3));
    } else if (warmest > glue.hottest->value - margin) {
        m.verdict = Verdict::warn;
        m.headline = fmt::format("{} softens from about {} °C; at {} °C in the air a stove or the sun brings it there.",
                                 glue.name, write_number(glue.hottest->value, 3), write_number(warmest, 3));
    }
    if (m.verdict != Verdict::pass) m.remedy = "use a glue that bears heat, such as resorcinol, or keep the piece cooler";
    look.working.push_back({"Warmest air against what the glue bears", "T/T_hottest",
                            fmt::format("{} °C, {} °C", write_number(warmest, 3), write_number(glue.hottest->value, 3)),
                            warmest / glue.hottest->value, "1", glue.hottest->cite.text()});
    look.matters.push_back(std::move(m));
}

void look_at_wood(const Prepared& prepared, const GluedPlace& place, std::size_t part, GlueLook& look)
{
    const PartState& state = prepared.parts[part];
    if (!state.record) return;
    const GlueRecord& glue = *place.glue;
    const Extractives& held = state.record->extractives;
    const bool hard = state.record->bonding == "with difficulty";
    if (hard || held.oily) {
        GlueMatter m;
        if (hard && state.record->bonding_cite)
            look.working.push_back({fmt::format("{} bonds with difficulty", state.species), "class of ease of bonding", "", 1,
                                    "1", state.record->bonding_cite->text()});
        if (held.oily)
            look.working.push_back({fmt::format("{} holds oil, wax or gum", state.species), "", "", 1, "1", held.oily->text()});
        m.verdict = glue.oily_woods ? Verdict::pass : Verdict::warn;
        m.headline = fmt::format("{} {} and takes {} badly.", state.species,
                                 held.oily ? "holds oil, wax or gum" : "bonds with difficulty", glue.name);
        m.remedy = "plane the faces and glue them within the hour, wipe oily wood with solvent first, break a test piece, or use "
                   "epoxy or "
                   "resorcinol";
        look.matters.push_back(std::move(m));
    }
    if (glue.alkaline && held.tannin) {
        GlueMatter m;
        m.verdict = Verdict::warn;
        m.headline = fmt::format("{} is alkaline and turns {}, rich in tannin, dark along the line.", glue.name, state.species);
        m.remedy = "use another glue, or hide the line";
        look.working.push_back({fmt::format("{} is rich in tannin", state.species), "", "", 1, "1", held.tannin->text()});
        look.matters.push_back(std::move(m));
    }
}

/// Clamps close faces, housings and laps; a tenon keeps the room it was cut with.
bool keeps_its_clearance(JointKind kind)
{
    return kind == JointKind::tenon || kind == JointKind::dowel || kind == JointKind::bridle || kind == JointKind::dovetail ||
           kind == JointKind::sliding_dovetail;
}

void look_at_gap(const Prepared& prepared, const GluedPlace& place, GlueLook& look)
{
    if (!place.contact || !place.glue->widest_gap) return;
    const Joint& joint = prepared.piece->joints[*prepared.layout->contacts[*place.contact].joint];
    const double gap = in_metres(joint.clearance);
    if (gap <= 0 || !keeps_its_clearance(joint.kind)) return;
    GlueMatter m;
    m.use = gap / place.glue->widest_gap->value;
    look.working.push_back(
        {"Clearance of the joint, each side, against the thickest line that holds", "u = gap/widest",
         fmt::format("{} mm, {} mm", write_number(gap * 1e3, 3), write_number(place.glue->widest_gap->value * 1e3, 3)), *m.use,
         "1", place.glue->widest_gap->cite.text()});
    if (*m.use > 1) {
        m.verdict = *m.use > prepared.facts->number("gap_fail_factor").value ? Verdict::fail : Verdict::warn;
        m.headline = fmt::format("A {} with {} of room on each side is too loose for {}, which holds in lines up to {}.",
                                 name_of(joint.kind), small_words(prepared, gap), place.glue->name,
                                 small_words(prepared, place.glue->widest_gap->value));
        m.remedy = "cut the joint closer, line it with veneer, or use epoxy, which fills gaps";
    }
    look.matters.push_back(std::move(m));
}

void look_at_lasting_load(const Prepared& prepared, const GluedPlace& place, GlueLook& look)
{
    if (!place.contact || !place.glue->creeps) return;
    const Contact& contact = prepared.layout->contacts[*place.contact];
    const Joint& joint = prepared.piece->joints[*contact.joint];
    const GluedArea glued = glued_area(contact, joint);
    if (!(glued.area > 0) || !place.glue->shear) return;
    const bool by_shape = bears_by_shape(joint, glued); // but nothing bears what hangs under a level face
    const Datum<double>& share = prepared.facts->number("creep_stress_share");
    for (const GlueDemand& demand : glue_demands(prepared, *place.contact, glued)) {
        if (demand.duration != LoadDuration::lasting || demand.proof) continue;
        const double stress = (by_shape ? 0 : demand.shear / glued.area) + (by_shape && !demand.hangs ? 0 : demand.tension);
        if (!(stress > 0)) continue;
        const double borne = share.value * place.glue->shear->value.value();
        GlueMatter m;
        m.use = stress / borne;
        look.working.push_back({fmt::format("Lasting stress on the glue: {}", demand.name), "u = τ/(0.1 f_glue)",
                                fmt::format("τ = {}", write_stress(pascals(stress))), *m.use, "1", share.cite.text()});
        if (*m.use > 1) {
            m.verdict = Verdict::warn;
            m.headline = fmt::format("{} creeps, and here it alone bears a load for good ({}).", place.glue->name, demand.name);
            m.remedy = "let shape or screws carry the lasting load, or use a glue that does not creep";
        }
        look.matters.push_back(std::move(m));
    }
}

void look_at_the_day(const Prepared& prepared, const GluedPlace& place, GlueLook& look)
{
    const GlueRecord& glue = *place.glue;
    const double shop = prepared.piece->room.shop.celsius();
    if (glue.coldest) {
        GlueMatter m;
        look.working.push_back({"Shop against the coldest that the glue may be used in", "T_shop, T_coldest",
                                fmt::format("{} °C, {} °C", write_number(shop, 3), write_number(glue.coldest->value, 3)),
                                shop - glue.coldest->value, "1", glue.coldest->cite.text()});
        if (shop < glue.coldest->value) {
            m.verdict = Verdict::fail;
            m.headline = fmt::format("A shop of {} °C is too cold for {}: below {} °C it does not set as it should.",
                                     write_number(shop, 3), glue.name, write_number(glue.coldest->value, 3));
            m.remedy = "warm shop, wood and glue, or use a glue for the cold, such as polyurethane";
        }
        look.matters.push_back(std::move(m));
    }
    for (const std::size_t p : {place.first, place.second}) {
        const double made = prepared.parts[p].made.percent();
        GlueMatter m;
        if (glue.wettest_wood && made > glue.wettest_wood->value) {
            m.verdict = Verdict::warn;
            m.headline = fmt::format("{} at {} of moisture is wet for {}, which wants at most {}.", prepared.piece->parts[p].id,
                                     write_percent(made), glue.name, write_percent(glue.wettest_wood->value));
            m.remedy = "let the stock dry first, or use a glue for damp wood, such as polyurethane";
            look.working.push_back({"Moisture at glue-up against the wettest that the glue takes", "M_made/M_wettest", "",
                                    made / glue.wettest_wood->value, "1", glue.wettest_wood->cite.text()});
        }
        look.matters.push_back(std::move(m));
    }
}

bool is_graver(const GlueMatter& a, const GlueMatter& b)
{
    if (severity(a.verdict) != severity(b.verdict)) return severity(a.verdict) > severity(b.verdict);
    return a.use.value_or(-1) > b.use.value_or(-1);
}

/// What is not well, each sentence once.
std::string all_headlines(const std::vector<GlueMatter>& matters)
{
    std::vector<std::string> told;
    for (const GlueMatter& m : matters)
        if (m.verdict != Verdict::pass && std::find(told.begin(), told.end(), m.headline) == told.end())
            told.push_back(m.headline);
    return fmt::format("{}", fmt::join(told, " "));
}

/// All of them have to be done, each once.
Remedy all_remedies(const std::vector<GlueMatter>& matters)
{
    std::vector<std::string> told;
    Remedy remedy;
    for (const GlueMatter& m : matters) {
        if (m.verdict == Verdict::pass || std::find(told.begin(), told.end(), m.remedy) != told.end()) continue;
        told.push_back(m.remedy);
        remedy.besides(m.remedy);
    }
    return remedy;
}

Finding judge_glue(const Prepared& prepared, const GluedPlace& place)
{
    GlueLook look;
    look_at_damp(prepared, place, look);
    look_at_heat(prepared, place, look);
    look_at_wood(prepared, place, place.first, look);
    if (prepared.parts[place.first].record != prepared.parts[place.second].record)
        look_at_wood(prepared, place, place.second, look);
    look_at_gap(prepared, place, look);
    look_at_lasting_load(prepared, place, look);
    look_at_the_day(prepared, place, look);
    std::stable_sort(look.matters.begin(), look.matters.end(), is_graver);
    const GlueMatter& worst = look.matters.front();

    Finding f;
    f.check = "glue-suits";
    f.subject = place.subject;
    f.where = place.place;
    if (place.contact) {
        const Contact& contact = prepared.layout->contacts[*place.contact];
        f.about.copies = {contact.first, contact.second};
    }
    f.verdict = worst.verdict;
    f.working = std::move(look.working);
    if (worst.use && !f.working.empty() && f.verdict != Verdict::pass)
        f.utilisation = worst.use; // while it suits: advice, no share
    f.values.push_back({"moisture_dampest", dampest_of(prepared, place), "%"});
    if (f.verdict == Verdict::pass) {
        f.headline = fmt::format("{} suits {} here: its damp, its fit and its wood{}.", place.glue->name, place.subject,
                                 is_outdoors(prepared) && place.glue->wet_use != "wet"
                                     ? "; keep it under a roof, where rain falls it wants a glue for wet places"
                                     : "");
    } else {
        f.headline = all_headlines(look.matters);
        f.remedy = all_remedies(look.matters);
    }
    gather_sources(f);
    const std::string water = place.glue->cite.text();
    if (std::find(f.sources.begin(), f.sources.end(), water) == f.sources.end()) f.sources.push_back(water);
    return f;
}

} // namespace

std::vector<Finding> check_glue_suits(const Prepared& prepared)
{
    std::vector<Finding> findings;
    const Piece& piece = *prepared.piece;
    for (std::size_t c = 0; c < prepared.layout->contacts.size(); ++c) {
        const Contact& contact = prepared.layout->contacts[c];
        if (!has_glue(prepared, contact)) continue;
        GluedPlace place;
        place.glue = prepared.facts->find_glue(*piece.joints[*contact.joint].glue);
        place.subject = pair_subject(prepared, contact);
        place.place = fmt::format("{}, {}", pair_place(prepared, contact), place.glue ? place.glue->name : "");
        place.first = piece.copies[contact.first].part;
        place.second = piece.copies[contact.second].part;
        place.contact = c;
        if (place.glue) keep_worst(findings, judge_glue(prepared, place));
    }
    for (std::size_t p = 0; p < piece.parts.size(); ++p) {
        const Part& part = piece.parts[p];
        if (!part.glued_up || !part.glued_up->glue) continue;
        GluedPlace place;
        place.glue = prepared.facts->find_glue(*part.glued_up->glue);
        place.subject = part.id;
        place.place = fmt::format("the edges of its {} boards, {}", part.glued_up->boards, place.glue ? place.glue->name : "");
        place.first = place.second = p;
        if (place.glue) keep_worst(findings, judge_glue(prepared, place));
    }
    return findings;
}

} // namespace jointwright
