// A wood as the tables have it.

#include "app/entry.hpp"
#include "judging/dust_words.hpp"
#include "measure/write.hpp"
#include "wood/movement.hpp"

#include <fmt/format.h>

namespace jointwright {

namespace {

/// Takes values that are there into a group and notes those that are not.
class Collector {
public:
    Collector(EntryGroup& group, std::string state, std::optional<double> moisture_pct, std::vector<std::string>* missing)
        : group_(group), state_(std::move(state)), moisture_pct_(moisture_pct), missing_(missing)
    {
    }

    template <class Q>
    void take(const char* name, const char* words, const char* unit, const std::optional<Datum<Q>>& datum)
    {
        if (datum)
            group_.values.push_back({name, words, plain(datum->value), unit, moisture_pct_, state_, datum->cite});
        else if (missing_ != nullptr)
            missing_->push_back(words);
    }

private:
    static double plain(double value) { return value; }
    static double plain(MoistureContent value) { return value.percent(); }
    static double plain(MovementCoefficient value) { return value.per_point(); }
    template <class Unit>
    static double plain(const Quantity<Unit>& value)
    {
        return value.value();
    }

    EntryGroup& group_;
    std::string state_;
    std::optional<double> moisture_pct_;
    std::vector<std::string>* missing_;
};

void take_strengths(Collector to, const StrengthRow& row)
{
    to.take("specific_gravity", "specific gravity (oven-dry mass)", "1", row.specific_gravity);
    to.take("bending_strength", "bending strength (modulus of rupture)", "Pa", row.bending_strength);
    to.take("modulus", "modulus of elasticity, from bending", "Pa", row.modulus);
    to.take("work_to_maximum_load", "work to maximum load", "J/m3", row.work_to_maximum_load);
    to.take("compression_along", "compression along the grain", "Pa", row.compression_along);
    to.take("compression_across", "compression across the grain", "Pa", row.compression_across);
    to.take("shear", "shear along the grain", "Pa", row.shear);
    to.take("tension_across", "tension across the grain", "Pa", row.tension_across);
    to.take("hardness", "side hardness", "N", row.hardness);
    to.take("impact_bending", "impact bending, drop height", "m", row.impact_bending);
}

/// All figures that stand behind the one that counts, where there are several.
void take_listed(EntryGroup& group, const char* name, const char* words, const std::vector<Datum<MovementCoefficient>>& listed)
{
    if (listed.size() < 2) return;
    for (const Datum<MovementCoefficient>& datum : listed)
        group.values.push_back({name, words, datum.value.per_point(), "1/%", std::nullopt, {}, datum.cite});
}

/// Printed coefficients, or those that the program works out from shrinkage where the table prints none.
EntryGroup movement(const Facts& facts, const WoodRecord& wood, std::vector<std::string>& missing)
{
    EntryGroup group{"movement across the grain, for each point of moisture", {}};
    auto tangential = wood.tangential, radial = wood.radial;
    const auto law = movement_law(facts, &wood);
    if (const auto* known = std::get_if<MovementLaw>(&law)) {
        if (!tangential) tangential = Datum<MovementCoefficient>{known->tangential, known->tangential_cite};
        if (!radial) radial = Datum<MovementCoefficient>{known->radial, known->radial_cite};
    }
    Collector to(group, {}, std::nullopt, &missing);
    to.take("movement_tangential", "tangential (flat-sawn)", "1/%", tangential);
    to.take("movement_radial", "radial (quarter-sawn)", "1/%", radial);
    take_listed(group, "movement_tangential_listed", "tangential, as listed", wood.listed_tangential);
    take_listed(group, "movement_radial_listed", "radial, as listed", wood.listed_radial);
    Collector(group, {}, std::nullopt, nullptr)
        .take("fibre_saturation", "fibre saturation to reckon with", "%", wood.fibre_saturation);
    return group;
}

EntryGroup shrinkage(const WoodRecord& wood, std::vector<std::string>& missing)
{
    EntryGroup group{"shrinkage from green to oven-dry", {}};
    Collector to(group, {}, std::nullopt, &missing);
    to.take("shrinkage_tangential", "tangential shrinkage", "%", wood.shrinkage_tangential);
    to.take("shrinkage_radial", "radial shrinkage", "%", wood.shrinkage_radial);
    to.take("shrinkage_volumetric", "volumetric shrinkage", "%", wood.shrinkage_volumetric);
    return group;
}

EntryGroup elastic_ratios(const WoodRecord& wood)
{
    EntryGroup group{"elastic ratios (E_L: modulus along the grain)", {}};
    Collector to(group, {}, std::nullopt, nullptr);
    const ElasticRatios& ratios = wood.elastic;
    to.take("elastic_tangential", "E_T/E_L", "1", ratios.tangential);
    to.take("elastic_radial", "E_R/E_L", "1", ratios.radial);
    to.take("shear_modulus_LR", "G_LR/E_L", "1", ratios.shear_lr);
    to.take("shear_modulus_LT", "G_LT/E_L", "1", ratios.shear_lt);
    to.take("shear_modulus_RT", "G_RT/E_L (rolling shear)", "1", ratios.shear_rt);
    to.take("poisson_LR", "Poisson ratio LR", "1", ratios.poisson_lr);
    to.take("poisson_LT", "Poisson ratio LT", "1", ratios.poisson_lt);
    to.take("poisson_RT", "Poisson ratio RT", "1", ratios.poisson_rt);
    to.take("poisson_TR", "Poisson ratio TR", "1", ratios.poisson_tr);
    to.take("poisson_RL", "Poisson ratio RL", "1", ratios.poisson_rl);
    to.take("poisson_TL", "Poisson ratio TL", "1", ratios.poisson_tl);
    return group;
}

/// The lists' crosses as a number; nothing where none are given.
std::string potency_words(const std::string& listed)
{
    if (listed.empty()) return {};
    if (listed.find_first_not_of('+') != std::string::npos) return "potency not known";
    return fmt::format("potency {} of 4", listed.size());
}

/// What holds for all dust; then what is listed for this wood, or that nothing is.
void add_dust(std::vector<EntryText>& texts, const Facts& facts, const WoodRecord& wood)
{
    texts.push_back({"dust_of_all_woods", "dust of any wood", dust_of_all_woods(facts), facts.number("dust_carcinogenic").cite});
    if (wood.dust.empty()) texts.push_back({"dust", "dust", dust_of(wood), {}});
    for (const DustHazard& dust : wood.dust) {
        std::string words = dust.effect;
        for (const std::string& more : {dust.site, potency_words(dust.potency)})
            if (!more.empty()) words += "; " + more;
        texts.push_back({"dust", "dust", words, dust.cite});
    }
}

std::vector<EntryText> wood_texts(const Facts& facts, const WoodRecord& wood)
{
    std::vector<EntryText> texts;
    texts.push_back({"kind", "kind", wood.kind == WoodKind::hardwood ? "hardwood" : "softwood", {}});
    if (!wood.nearest.empty()) texts.push_back({"nearest", "figures", nearest_sentence(wood), {}});
    if (!wood.note.empty()) texts.push_back({"note", "note", wood.note, {}});
    if (!wood.elastic.like.empty())
        texts.push_back({"elastic_like",
                         "elastic ratios",
                         fmt::format("those not listed here are taken from {} ({})", wood.elastic.like, wood.elastic.like_why),
                         {}});
    if (const auto& cite = wood.extractives.oily)
        texts.push_back({"oily", "oil, wax or gum", "keeps glue off fresh faces too", cite});
    if (const auto& cite = wood.extractives.tannin) texts.push_back({"tannin", "tannin", "alkali and iron turn it dark", cite});
    if (const auto& cite = wood.extractives.acid) texts.push_back({"acid", "acid", "eats plain steel where it is damp", cite});
    if (wood.bonding) texts.push_back({"bonding", "gluing", "bonds " + *wood.bonding, wood.bonding_cite});
    add_dust(texts, facts, wood);
    return texts;
}

} // namespace

Entry entry_of(const Facts& facts, const WoodRecord& wood)
{
    Entry entry;
    entry.name = wood.name;
    entry.botanical = wood.botanical;
    entry.aliases = wood.aliases;
    entry.groups.push_back(movement(facts, wood, entry.missing));
    entry.groups.push_back(shrinkage(wood, entry.missing));

    std::vector<std::string> missing_dry, missing_green;
    EntryGroup dry{fmt::format("at {} moisture", write_percent(wood.dry_moisture_pct)), {}}, green{"green", {}};
    take_strengths(Collector(dry, "dry", wood.dry_moisture_pct, &missing_dry), wood.dry);
    take_strengths(Collector(green, "green", std::nullopt, &missing_green), wood.green);
    Collector(green, "green", std::nullopt, nullptr)
        .take("intersection_moisture", "moisture from which drying strengthens it", "%", wood.intersection_moisture);
    entry.missing.insert(entry.missing.end(), missing_dry.begin(), missing_dry.end());
    if (green.values.empty())
        entry.missing.push_back("any strength when green");
    else
        for (const std::string& name : missing_green) entry.missing.push_back(name + " when green");
    entry.groups.push_back(std::move(dry));
    entry.groups.push_back(std::move(green));

    entry.groups.push_back(elastic_ratios(wood));
    if (entry.groups.back().values.empty()) entry.missing.push_back("elastic ratios");
    if (!wood.bonding) entry.missing.push_back("how well it glues");
    entry.texts = wood_texts(facts, wood);
    return entry;
}

} // namespace jointwright
