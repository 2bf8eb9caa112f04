#include "facts/read_other_tables.hpp"

#include "measure/read.hpp"

namespace jointwright {

namespace {

constexpr std::string_view kStress[] = {"MPa", "kPa", "N/mm2", "psi"}, kRatio[] = {"1"}, kPercent[] = {"%"},
                           kTime[] = {"s", "min", "h"}, kCelsius[] = {"C"}, kLength[] = {"mm"}, kSpread[] = {"g/m2"};

template <class Record, class Read>
std::vector<Record> read_rows(const TableReader& r, std::string_view text, std::string_view file, std::string_view key, Read read)
{
    const toml::table table = parse_table(text, file);
    const toml::node* node = table.get(key);
    const toml::array* rows = node ? node->as_array() : nullptr;
    if (!rows) r.broken(key, "no such entries");
    std::vector<Record> records;
    for (const toml::node& row : *rows) {
        const toml::table* entry = row.as_table();
        if (!entry) r.broken(key, "a table is wanted");
        records.push_back(read(*entry));
    }
    return records;
}

Season read_season(const TableReader& r, const toml::table& entry, std::string_view key)
{
    const toml::node* node = entry.get(key);
    const toml::table* season = node ? node->as_table() : nullptr;
    if (!season) r.broken(key, "{ humidity, temperature } or { moisture } is wanted");
    if (season->contains("moisture")) return MoistureContent::percent(r.plain_number(*season, "moisture", 0));
    if (!season->contains("humidity")) r.broken(key, "humidity or moisture is missing");
    const auto temperature = read_temperature(r.required_text(*season, "temperature"));
    if (!temperature) r.broken(key, temperature.why().says);
    return AirState{RelativeHumidity::percent(r.plain_number(*season, "humidity", 0)), *temperature};
}

std::optional<SourcedWords> read_words(const TableReader& r, const toml::table& entry, std::string_view key)
{
    const toml::table* words = r.part(entry, key);
    if (!words) return std::nullopt;
    return SourcedWords{r.required_text(*words, "says"), r.citation(*words, key)};
}

/// How a glue is used, and what is said of it.
void read_use_of(const TableReader& r, const toml::table& entry, GlueRecord& glue)
{
    glue.open_time = r.number(&entry, "open_time", kTime);
    glue.closed_time = r.number(&entry, "closed_time", kTime);
    glue.clamp_time = r.number(&entry, "clamp_time", kTime);
    glue.warmer_time = r.number(&entry, "warmer_time", kRatio);
    glue.coldest = r.number(&entry, "coldest", kCelsius);
    glue.hottest = r.number(&entry, "hottest", kCelsius);
    glue.driest_wood = r.number(&entry, "driest_wood", kPercent);
    glue.wettest_wood = r.number(&entry, "wettest_wood", kPercent);
    glue.widest_gap = r.number(&entry, "widest_gap", kLength);
    glue.spread = r.number(&entry, "spread", kSpread);
    glue.pressure = as<Stress>(r.number(&entry, "pressure", kStress), pascals);
    glue.standard = read_words(r, entry, "standard");
    glue.yields = read_words(r, entry, "yields");
    glue.reverses = read_words(r, entry, "reverses");
    glue.stains = read_words(r, entry, "stains");
    glue.food = read_words(r, entry, "food");
    glue.hazard = read_words(r, entry, "hazard");
}

} // namespace

std::vector<RoomRecord> read_rooms(const TableReader& r, std::string_view text, std::string_view file)
{
    return read_rows<RoomRecord>(r, text, file, "room", [&](const toml::table& entry) {
        RoomRecord room;
        room.name = r.required_text(entry, "name");
        room.says = r.text(entry, "says");
        room.outdoors = r.flag(entry, "outdoors");
        room.driest = read_season(r, entry, "driest");
        room.dampest = read_season(r, entry, "dampest");
        room.cite = r.citation(entry, room.name);
        return room;
    });
}

std::vector<GlueRecord> read_glues(const TableReader& r, std::string_view text, std::string_view file)
{
    return read_rows<GlueRecord>(r, text, file, "glue", [&](const toml::table& entry) {
        GlueRecord glue;
        glue.name = r.required_text(entry, "name");
        glue.aliases = r.texts(entry, "aliases");
        glue.says = r.text(entry, "says");
        glue.water = r.text(entry, "water");
        glue.wet_use = r.text(entry, "wet_use");
        if (glue.wet_use != "dry" && glue.wet_use != "damp" && glue.wet_use != "wet")
            r.broken(glue.name, "wet_use is dry, damp or wet");
        glue.cite = r.citation(entry, glue.name);
        glue.shear = as<Stress>(r.number(&entry, "shear", kStress), pascals);
        glue.wet_shear = as<Stress>(r.number(&entry, "wet_shear", kStress), pascals);
        glue.relaxation = r.number(&entry, "relaxation", kRatio);
        glue.creeps = r.flag(entry, "creeps");
        glue.gap_filling = r.flag(entry, "gap_filling");
        glue.indoors_only = r.flag(entry, "indoors_only");
        glue.oily_woods = r.flag(entry, "oily_woods");
        glue.alkaline = r.flag(entry, "alkaline");
        if (const std::string en204 = r.text(entry, "en204"); !en204.empty()) glue.en204 = en204;
        read_use_of(r, entry, glue);
        return glue;
    });
}

std::vector<FinishRecord> read_finishes(const TableReader& r, std::string_view text, std::string_view file)
{
    return read_rows<FinishRecord>(r, text, file, "finish", [&](const toml::table& entry) {
        FinishRecord finish;
        finish.name = r.required_text(entry, "name");
        finish.aliases = r.texts(entry, "aliases");
        finish.note = r.text(entry, "note");
        finish.drying_oil = r.flag(entry, "drying_oil");
        const toml::node* node = entry.get("coats");
        const toml::array* rows = node ? node->as_array() : nullptr;
        if (!rows) r.broken(finish.name, "no [[finish.coats]]");
        for (const toml::node& row : *rows) {
            const toml::table* coat = row.as_table();
            if (!coat) r.broken(finish.name, "a table is wanted");
            FinishCoats coats;
            coats.coats = static_cast<int>(r.plain_number(*coat, "coats", 1));
            coats.day_1 = r.number(coat, "day_1", kPercent);
            coats.day_7 = r.number(coat, "day_7", kPercent);
            coats.day_14 = r.number(coat, "day_14", kPercent);
            finish.coats.push_back(std::move(coats));
        }
        return finish;
    });
}

} // namespace jointwright
