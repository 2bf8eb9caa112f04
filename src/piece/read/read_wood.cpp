// [[wood]]: species, ring cut, finish, moisture, own test values.

#include "piece/read/readers.hpp"

#include "facts/meanings.hpp"
#include "measure/text.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace jointwright {

namespace {

std::optional<Angle> as_ring_cut(Reading& reading, const DesignValue& value)
{
    if (value.is_number()) {
        const auto number = as_number(reading, value, "rings", {0, 90, true, "degrees", "0 is flat-sawn, 90 quarter-sawn"});
        if (!number) return std::nullopt;
        return degrees(*number);
    }
    const auto choice = as_choice(reading, value, "rings", "ring cut", {"flat", "rift", "quarter"});
    if (!choice) return std::nullopt;
    return degrees(45.0 * static_cast<double>(*choice));
}

/// @param in_list  the name stands in a list already
std::optional<std::string> as_species(Reading& reading, const DesignValue& value, bool in_list)
{
    const auto text = as_text(reading, value, "species");
    if (!text) return std::nullopt;
    if (const auto meanings = meanings_of(reading.facts, *text)) {
        std::string all; // a list means: not sure which, check every one
        for (const std::string& wood : likeliest_woods(reading.facts, *meanings))
            all += (all.empty() ? "" : ", ") + toml_text(wood);
        reading.fault(value.spot, "unknown-wood", fmt::format("{} means different woods in different places", in_quotes(*text)),
                      reading.fixed(value, in_list ? all : "[" + all + "]"), meanings->words());
        return std::nullopt;
    }
    if (const WoodRecord* wood = reading.facts.find_wood(*text)) {
        if (!wood->nearest.empty()) reading.assumed.push_back(nearest_sentence(*wood));
        return wood->name;
    }
    reading.unknown_name(value, "unknown-wood", fmt::format("no wood is named {}", in_quotes(*text)),
                         reading.facts.suggest_woods(*text), "`jointwright species` lists them all");
    return std::nullopt;
}

void read_species(Reading& reading, const DesignValue& value, WoodChoice& wood)
{
    const auto names = one_or_more(value);
    if (names.empty())
        reading.fault(value.spot, "missing-key", "species is an empty list; name at least one wood",
                      reading.fixed(value, R"("white oak")"));
    for (const DesignValue* name : names) {
        const auto species = as_species(reading, *name, value.kind == DesignValue::Kind::list);
        if (species && std::find(wood.species.begin(), wood.species.end(), *species) == wood.species.end())
            wood.species.push_back(*species);
    }
}

void read_properties(Reading& reading, const DesignValue& value, WoodChoice& wood)
{
    const Stress most_stiff = gigapascals(100);
    const Stress most_strong = gigapascals(1);
    if (!is_kind(reading, value, "properties", DesignValue::Kind::table, R"({ modulus = "12.5 GPa" })")) return;
    DesignTable table(reading, value, "properties");
    const auto stress = [&](std::string_view key, std::optional<Stress>& into, Stress most) {
        if (const DesignValue* given = table.may(key)) into = as_stress(reading, *given, key, most);
    };
    const auto coefficient = [&](std::string_view key, std::optional<MovementCoefficient>& into) {
        const DesignValue* given = table.may(key);
        if (given == nullptr) return;
        const NumberRange range{0, 0.02, false, "per percent of moisture", "woods of the tables lie between 0.0005 and 0.005"};
        if (const auto number = as_number(reading, *given, key, range)) into = MovementCoefficient::per_point(*number);
    };
    stress("modulus", wood.own_strength.modulus, most_stiff);
    stress("shear_modulus", wood.own_strength.shear_modulus, most_stiff);
    stress("bending_strength", wood.own_strength.bending_strength, most_strong);
    stress("shear_strength", wood.own_strength.shear_strength, most_strong);
    stress("tension_across", wood.own_strength.tension_across, most_strong);
    const auto& own = wood.own_strength;
    if (own.modulus && own.shear_modulus && *own.shear_modulus >= *own.modulus)
        reading.fault(table.key_spot("shear_modulus"), "out-of-range",
                      "shear_modulus is not below modulus: of no wood is it, a tenth to a twentieth is usual", {},
                      "table 5-1 of the Wood Handbook has 0.04 to 0.1 along the grain");
    if (const DesignValue* given = table.may("density")) wood.own_strength.density = as_density(reading, *given, "density");
    coefficient("tangential", wood.own_movement.tangential);
    coefficient("radial", wood.own_movement.radial);
    table.finish();
}

WoodChoice read_wood(Reading& reading, const DesignValue& value)
{
    DesignTable table(reading, value, "[[wood]]");
    WoodChoice wood;
    wood.spot = value.spot;
    if (const DesignValue* id = table.must("id", R"("frame")"))
        if (auto text = as_id(reading, *id, "id")) {
            wood.spot = id->spot;
            wood.id = std::move(*text);
            table.rename(fmt::format("wood {}", in_quotes(wood.id)));
        }
    if (const DesignValue* properties = table.may("properties")) read_properties(reading, *properties, wood);
    const DesignValue* species = table.has("properties") ? table.may("species") : table.must("species", R"("white oak")");
    if (species != nullptr) read_species(reading, *species, wood);
    if (const DesignValue* rings = table.may("rings")) {
        if (auto cuts = as_rings(reading, *rings)) wood.rings = std::move(*cuts);
        wood.rings_stated = true;
    }
    if (wood.rings.empty()) wood.rings.push_back(degrees(0));
    if (const DesignValue* finish = table.may("finish")) read_finish(reading, *finish, wood.finish);
    if (const DesignValue* moisture = table.may("moisture")) wood.moisture = as_moisture(reading, *moisture, "moisture");
    table.finish();
    return wood;
}

} // namespace

std::optional<std::vector<Angle>> as_rings(Reading& reading, const DesignValue& value)
{
    const NotAboutShapes scope(reading);
    const auto items = one_or_more(value);
    if (items.empty()) {
        reading.fault(value.spot, "missing-key", "rings is an empty list; name at least one ring cut",
                      reading.fixed(value, R"("flat")"));
        return std::nullopt;
    }
    std::vector<Angle> cuts;
    bool good = true;
    for (const DesignValue* item : items) {
        const auto cut = as_ring_cut(reading, *item);
        good = good && cut.has_value();
        if (cut && std::find(cuts.begin(), cuts.end(), *cut) == cuts.end()) cuts.push_back(*cut);
    }
    if (!good) return std::nullopt;
    return cuts;
}

void read_woods(Reading& reading, const DesignValue& list, Piece& piece)
{
    std::map<std::string, unsigned, std::less<>> lines;
    for (const DesignValue* value : tables_of(reading, list, "wood")) {
        WoodChoice wood = read_wood(reading, *value);
        const auto [before, fresh] = lines.emplace(wood.id, wood.spot.line);
        if (!fresh && !wood.id.empty())
            reading.fault(wood.spot, "duplicate-id", fmt::format("two woods have the id {}", in_quotes(wood.id)),
                          reading.source.replaced(wood.spot, toml_text(wood.id + " 2")),
                          fmt::format("the first one is in line {}", before->second));
        piece.woods.push_back(std::move(wood));
    }
}

} // namespace jointwright
