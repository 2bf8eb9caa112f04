#include "facts/read_wood_record.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <iterator>

namespace jointwright {

namespace {

// Units in which a table may print each kind of value.
constexpr std::string_view kStress[] = {"MPa", "GPa", "kPa", "N/mm2", "psi", "ksi"}, kForce[] = {"N", "kN", "lbf"},
                           kLength[] = {"mm", "m"}, kEnergyDensity[] = {"kJ/m3"};
constexpr std::string_view kPercent[] = {"%"}, kRatio[] = {"1"}, kPerPoint[] = {"1/%", "% per %"};

MovementCoefficient coefficient(double v) { return MovementCoefficient::per_point(v); }
MoistureContent moisture(double v) { return MoistureContent::percent(v); }

StrengthRow read_row(const TableReader& r, const toml::table* table)
{
    StrengthRow row;
    if (!table) return row;
    row.specific_gravity = r.number(table, "specific_gravity", kRatio);
    row.bending_strength = as<Stress>(r.number(table, "bending_strength", kStress), pascals);
    row.modulus = as<Stress>(r.number(table, "modulus", kStress), pascals);
    row.work_to_maximum_load = r.number(table, "work_to_maximum_load", kEnergyDensity);
    row.compression_along = as<Stress>(r.number(table, "compression_along", kStress), pascals);
    row.compression_across = as<Stress>(r.number(table, "compression_across", kStress), pascals);
    row.shear = as<Stress>(r.number(table, "shear", kStress), pascals);
    row.tension_across = as<Stress>(r.number(table, "tension_across", kStress), pascals);
    row.hardness = as<Force>(r.number(table, "hardness", kForce), newtons);
    row.impact_bending = as<Length>(r.number(table, "impact_bending", kLength), metres);
    return row;
}

ElasticRatios read_ratios(const TableReader& r, const toml::table* table)
{
    ElasticRatios ratios;
    if (!table) return ratios;
    ratios.tangential = r.number(table, "tangential", kRatio);
    ratios.radial = r.number(table, "radial", kRatio);
    ratios.shear_lr = r.number(table, "shear_LR", kRatio);
    ratios.shear_lt = r.number(table, "shear_LT", kRatio);
    ratios.shear_rt = r.number(table, "shear_RT", kRatio);
    ratios.poisson_lr = r.number(table, "poisson_LR", kRatio);
    ratios.poisson_lt = r.number(table, "poisson_LT", kRatio);
    ratios.poisson_rt = r.number(table, "poisson_RT", kRatio);
    ratios.poisson_tr = r.number(table, "poisson_TR", kRatio);
    ratios.poisson_rl = r.number(table, "poisson_RL", kRatio);
    ratios.poisson_tl = r.number(table, "poisson_TL", kRatio);
    ratios.like = r.text(*table, "like");
    ratios.like_why = r.text(*table, "like_why");
    return ratios;
}

constexpr std::string_view kHandbook = "wood-handbook-2010"; // its table 13-5

struct ListedCoefficient {
    Datum<MovementCoefficient> datum;
    bool of_the_handbook = false; ///< read in the handbook's own table of coefficients of these very woods
};

std::vector<ListedCoefficient> read_coefficients(const TableReader& r, const toml::table* movement, std::string_view key)
{
    const toml::array* list = movement->get_as<toml::array>(key);
    const auto is_from_handbook = [&](std::size_t i) {
        const toml::node& item = list ? *list->get(i) : *movement->get(key);
        const toml::node* source = item.is_table() ? item.as_table()->get("source") : nullptr;
        return source && source->value_or(std::string_view{}) == kHandbook;
    };
    std::vector<ListedCoefficient> all;
    for (const Datum<double>& datum : r.numbers(movement, key, kPerPoint)) {
        const bool of_the_handbook = datum.cite.provenance == Provenance::retrieved && is_from_handbook(all.size());
        all.push_back({{coefficient(datum.value), datum.cite}, of_the_handbook});
    }
    return all;
}

std::vector<Datum<MovementCoefficient>> data_of(const std::vector<ListedCoefficient>& all)
{
    std::vector<Datum<MovementCoefficient>> data;
    for (const ListedCoefficient& c : all) data.push_back(c.datum);
    return data;
}

/// The handbook's own figure for that wood, read in its table, before trade data. Else of several printed figures the largest, for a pass is a
/// promise; a computed one comes out too small and steps back.
std::optional<Datum<MovementCoefficient>> coefficient_that_counts(const std::vector<ListedCoefficient>& all)
{
    std::vector<ListedCoefficient> candidates;
    std::copy_if(all.begin(), all.end(), std::back_inserter(candidates),
                 [](const ListedCoefficient& c) { return c.datum.cite.provenance != Provenance::computed; });
    if (candidates.empty()) candidates = all;
    if (candidates.empty()) return std::nullopt;
    const auto by_value = [](const auto& a, const auto& b) { return a.datum.value < b.datum.value; };
    const auto [least, most] = std::minmax_element(candidates.begin(), candidates.end(), by_value);
    const auto own = std::find_if(candidates.begin(), candidates.end(), [](const auto& c) { return c.of_the_handbook; });
    Datum<MovementCoefficient> chosen =
        own != candidates.end() ? own->datum : std::max_element(candidates.begin(), candidates.end(), by_value)->datum;
    if (candidates.size() == 1) return chosen;
    chosen.cite.note += chosen.cite.note.empty() ? "" : "; ";
    chosen.cite.note +=
        fmt::format("{} of {} figures, from {:.5f} to {:.5f}", own != candidates.end() ? "the handbook's own" : "the largest",
                    candidates.size(), least->datum.value.per_point(), most->datum.value.per_point());
    return chosen;
}

void read_movement(const TableReader& r, const toml::table& table, WoodRecord& wood)
{
    if (const toml::table* movement = r.part(table, "movement")) {
        const auto tangential = read_coefficients(r, movement, "tangential"), radial = read_coefficients(r, movement, "radial");
        wood.listed_tangential = data_of(tangential);
        wood.listed_radial = data_of(radial);
        wood.tangential = coefficient_that_counts(tangential);
        wood.radial = coefficient_that_counts(radial);
        wood.fibre_saturation = as<MoistureContent>(r.number(movement, "fibre_saturation", kPercent), moisture);
    }
    if (const toml::table* shrinkage = r.part(table, "shrinkage")) {
        wood.shrinkage_tangential = r.number(shrinkage, "tangential", kPercent);
        wood.shrinkage_radial = r.number(shrinkage, "radial", kPercent);
        wood.shrinkage_volumetric = r.number(shrinkage, "volumetric", kPercent);
    }
}

bool any_figure(const StrengthRow& row)
{
    return row.specific_gravity || row.bending_strength || row.modulus || row.work_to_maximum_load || row.compression_along ||
           row.compression_across || row.shear || row.tension_across || row.hardness || row.impact_bending;
}

} // namespace

bool WoodRecord::has_figures() const
{
    return tangential || radial || shrinkage_tangential || shrinkage_radial || shrinkage_volumetric || any_figure(dry) ||
           any_figure(green);
}

WoodRecord read_wood_record(const TableReader& r, std::string_view text, std::string_view file)
{
    const toml::table table = parse_table(text, file);
    WoodRecord wood;
    wood.file = std::string(file);
    wood.name = r.required_text(table, "name");
    wood.botanical = r.text(table, "botanical");
    wood.note = r.text(table, "note");
    wood.nearest = r.text(table, "nearest");
    wood.nearest_why = r.text(table, "nearest_why");
    wood.aliases = r.texts(table, "aliases");
    const std::string kind = r.required_text(table, "kind");
    if (kind != "hardwood" && kind != "softwood") r.broken("kind", "hardwood or softwood is wanted");
    wood.kind = kind == "hardwood" ? WoodKind::hardwood : WoodKind::softwood;
    read_movement(r, table, wood);
    const toml::table* dry = r.part(table, "dry");
    wood.dry = read_row(r, dry);
    if (dry) wood.dry_moisture_pct = r.plain_number(*dry, "moisture", 12);
    wood.green = read_row(r, r.part(table, "green"));
    wood.intersection_moisture =
        as<MoistureContent>(r.number(r.part(table, "strength"), "intersection_moisture", kPercent), moisture);
    wood.elastic = read_ratios(r, r.part(table, "elastic"));
    if (const toml::table* bonding = r.part(table, "bonding"))
        if (const toml::table* ease = r.part(*bonding, "ease")) {
            wood.bonding = r.required_text(*ease, "printed");
            wood.bonding_cite = r.citation(*ease, "bonding");
        }
    if (const toml::table* held = r.part(table, "extractives"))
        for (const auto& [key, cite] : {std::pair{"oily", &wood.extractives.oily}, std::pair{"tannin", &wood.extractives.tannin},
                                        std::pair{"acid", &wood.extractives.acid}})
            if (const toml::table* entry = r.part(*held, key))
                if (r.required_text(*entry, "printed") == "yes") *cite = r.citation(*entry, key);
    if (const toml::node* node = table.get("dust"))
        if (const toml::array* rows = node->as_array())
            for (const toml::node& row : *rows)
                if (const toml::table* entry = row.as_table())
                    wood.dust.push_back({r.text(*entry, "effect"), r.text(*entry, "site"), r.text(*entry, "potency"),
                                         r.citation(*entry, "dust")});
    return wood;
}

} // namespace jointwright
