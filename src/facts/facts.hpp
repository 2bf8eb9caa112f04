#pragma once
// The tables of data/: loaded once, immutable, passed by reference. Woods are parsed only when they are asked for.

#include "facts/citation.hpp"
#include "facts/wood_record.hpp"
#include "measure/moisture.hpp"
#include "measure/quantity.hpp"

#include <map>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace jointwright {

/// The texts of the data folder by relative path, "woods/cherry-black.toml" -> content.
using DataTexts = std::map<std::string, std::string, std::less<>>;

/// The data folder as it was when the program was built.
const DataTexts& embedded_data();

/// A table of data/ is broken: a syntax error, an unknown source, a unit of the wrong kind. The sentence names file and place.
class BrokenData : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

/// State of the air, or the moisture content that wood settles at in it.
struct AirState {
    RelativeHumidity humidity = RelativeHumidity::percent(50);
    Temperature temperature = Temperature::celsius(20);
};
using Season = std::variant<AirState, MoistureContent>;

struct RoomRecord {
    std::string name, says;
    bool outdoors = false; ///< open air, under a roof
    Season driest, dampest;
    Citation cite;
};

/// Something said in words, with its source.
struct SourcedWords {
    std::string says;
    Citation cite;
};

/// A kind of glue. Plain numbers are SI (s, m, kg/m²); temperatures in °C, moisture in percent. What the table lacks is empty.
struct GlueRecord {
    std::string name, says, water, wet_use;
    std::vector<std::string> aliases;
    Citation cite;                           ///< of `water` and `wet_use`; its note is about the glue as a whole
    std::optional<Datum<Stress>> shear;      ///< mean, good side-grain bond, where a figure is known
    std::optional<Datum<Stress>> wet_shear;  ///< what its class asks of the wet line
    std::optional<Datum<double>> relaxation; ///< share of stress kept under slow movement
    bool creeps = false, gap_filling = false;
    bool indoors_only = false; ///< its source rules out the open air, roof or not
    bool oily_woods = false;   ///< takes woods with oil or wax better than glues on water
    bool alkaline = false;     ///< darkens wood rich in tannin
    std::optional<std::string> en204;
    std::optional<Datum<double>> open_time, closed_time,
        clamp_time;                                         ///< at 20 °C: spreading to closing, closing to pressure, in clamps
    std::optional<Datum<double>> warmer_time;               ///< open time at 10 K more over that at 20 °C
    std::optional<Datum<double>> coldest, hottest;          ///< when glued; in use
    std::optional<Datum<double>> driest_wood, wettest_wood; ///< when glued
    std::optional<Datum<double>> widest_gap;                ///< thickest line that still holds
    std::optional<Datum<double>> spread;                    ///< on one face
    std::optional<Datum<Stress>> pressure;                  ///< only where the glue, not the wood, decides
    std::optional<SourcedWords> standard, yields, reverses, stains, food, hazard;
};

struct FinishCoats {
    int coats = 1;
    std::optional<Datum<double>> day_1, day_7, day_14; ///< moisture-excluding effectiveness, percent
};
struct FinishRecord {
    std::string name, note;
    std::vector<std::string> aliases;
    bool drying_oil = false; ///< heats as it cures: rags wet with it can catch fire by themselves
    std::vector<FinishCoats> coats;
};

/// One entry of a list verb: a name and a few words.
struct Listing {
    std::string name, words;
};

class Facts {
public:
    /// @throws BrokenData  a table that every run needs (sources, limits) is missing or wrong
    explicit Facts(DataTexts texts);
    ~Facts();
    Facts(Facts&&) noexcept;
    Facts& operator=(Facts&&) noexcept;

    /// The wood of that name or alias, forgiving of case, commas, hyphens and word order; nullptr when there is none.
    const WoodRecord* find_wood(std::string_view name) const;
    const RoomRecord* find_room(std::string_view name) const;
    const GlueRecord* find_glue(std::string_view name) const;
    const FinishRecord* find_finish(std::string_view name) const;

    /// Up to `most` names nearest to a name that was not found, best first, in the spelling of the tables.
    std::vector<std::string> suggest_woods(std::string_view name, std::size_t most = 3) const;
    std::vector<std::string> suggest_rooms(std::string_view name, std::size_t most = 3) const;
    std::vector<std::string> suggest_glues(std::string_view name, std::size_t most = 3) const;
    std::vector<std::string> suggest_finishes(std::string_view name, std::size_t most = 3) const;

    std::vector<Listing> woods() const;
    std::vector<Listing> rooms() const;
    std::vector<Listing> glues() const;
    std::vector<Listing> finishes() const;

    /// A number of strength.toml, limits.toml, loads.toml, joints.toml or fastenings.toml in SI (percent as a share), by its key, for example "sag_seat_rail".
    /// @throws BrokenData  there is no such key
    const Datum<double>& number(std::string_view key) const;

    /// The readable short form of a source key: "Wood Handbook (USDA FPL GTR-190, 2010)".
    /// @throws BrokenData  there is no such key
    const std::string& source(std::string_view key) const;
    /// The same, or nullptr when there is no such key.
    const std::string* find_source(std::string_view key) const;
    /// "Wood Handbook (USDA FPL GTR-190, 2010), eq. 4-5".
    std::string cite(std::string_view source_key, std::string_view where) const;

    /// Any text of the data folder, for example "checks/cross-grain.md"; nullptr when there is none.
    const std::string* text(std::string_view path) const;
    /// Paths of all texts of the data folder, sorted.
    std::vector<std::string> all_paths() const;
    /// Paths below a folder of the data folder, sorted.
    std::vector<std::string> paths_under(std::string_view folder) const;
    /// Version of the tables: a short fingerprint of all texts.
    std::string fingerprint() const;

private:
    struct Tables;
    std::unique_ptr<Tables> tables_;
};

/// Spellings near to `wanted` among `known`, best first: edit distance on normalised words. For unknown keys and names.
std::vector<std::string> nearest_spellings(std::string_view wanted, const std::vector<std::string>& known, std::size_t most = 3);

} // namespace jointwright
