#include "wood/state.hpp"

#include "measure/write.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kDryRow = 12; // percent: moisture content that strengths are adjusted from

const char* word_of_kind(WoodKind kind) { return kind == WoodKind::hardwood ? "hardwood" : "softwood"; }

/// Builds the properties of one wood; holds what they share.
class StateMaker {
public:
    StateMaker(const Facts& facts, const WoodRecord* wood, MoistureContent moisture)
        : facts_(facts), wood_(wood), moisture_(moisture)
    {
        kind_ = wood ? wood->kind : WoodKind::hardwood;
        intersection_ = wood && wood->intersection_moisture ? wood->intersection_moisture->value.percent()
                                                            : facts.number("intersection_moisture").value * 100;
    }

    WoodKind kind() const { return kind_; }
    std::optional<Property<double>> specific_gravity() const;
    std::optional<Property<Density>> density(const std::optional<Property<double>>& gravity) const;

    /// A strength or modulus by its column, adjusted to the moisture content; estimated from specific gravity where the table lacks it.
    std::optional<Property<Stress>> strength(std::optional<Datum<Stress>> StrengthRow::*column, std::string_view name,
                                             bool may_rise) const;
    std::optional<Property<Stress>> tension_across() const;

    /// Modulus along × a ratio: own, of the named relative, or the median of the kind.
    std::optional<Property<Stress>> elastic(const std::optional<Property<Stress>>& along,
                                            std::optional<Datum<double>> ElasticRatios::*ratio, std::string_view name) const;
    std::optional<Property<Stress>> rolling(const std::optional<Property<Stress>>& along,
                                            const std::optional<Property<Stress>>& tangential) const;

    /// Compression along the grain of a wood that only own values describe, from those: the lower of what the specific-gravity relations give
    /// for its bending strength and for its density.
    std::optional<Property<Stress>> compression_by_own(const OwnStrength& own) const;

private:
    std::optional<double> gravity_of_row(bool green) const;
    std::optional<Property<Stress>> estimate(std::string_view name, bool green) const;
    double adjusted(double dry, double green, double row_moisture) const;
    std::optional<double> green_ratio(std::string_view name) const;

    const Facts& facts_;
    const WoodRecord* wood_;
    MoistureContent moisture_;
    WoodKind kind_;
    double intersection_;
};

std::optional<double> StateMaker::gravity_of_row(bool green) const
{
    if (!wood_) return std::nullopt;
    const auto& own = green ? wood_->green.specific_gravity : wood_->dry.specific_gravity;
    if (own) return own->value;
    // From the other row by G_x = G_b/[1 − 0.265 G_b (1 − x/30)], Wood Handbook eq. 4-11.
    const auto& other = green ? wood_->dry.specific_gravity : wood_->green.specific_gravity;
    if (!other) return std::nullopt;
    const double share = 0.265 * (1 - kDryRow / 30);
    return green ? other->value / (1 + share * other->value) : other->value / (1 - share * other->value);
}

std::optional<Property<double>> StateMaker::specific_gravity() const
{
    const auto basic = gravity_of_row(true);
    if (!basic) return std::nullopt;
    const double m = std::min(moisture_.percent(), 30.0);
    const auto& own = wood_->green.specific_gravity ? wood_->green.specific_gravity : wood_->dry.specific_gravity;
    return Property<double>{*basic / (1 - 0.265 * *basic * (1 - m / 30)), false, own->cite.text(),
                            fmt::format("basic specific gravity {}, G_M = G_b/[1 − 0.265 G_b (1 − M/30)], Wood Handbook eq. 4-11",
                                        write_number(*basic, 3))};
}

std::optional<Property<Density>> StateMaker::density(const std::optional<Property<double>>& gravity) const
{
    if (!gravity) return std::nullopt;
    return Property<Density>{kilograms_per_cubic_metre(gravity->value * (1 + moisture_.percent() / 100) * 1000),
                             gravity->estimated, gravity->source, gravity->note};
}

std::optional<Property<Stress>> StateMaker::estimate(std::string_view name, bool green) const
{
    const auto gravity = gravity_of_row(green);
    if (!gravity) return std::nullopt;
    const std::string key = fmt::format("regression_{}_{}_{}", name, green ? "green" : "dry", word_of_kind(kind_));
    const Datum<double>& a = facts_.number(key + "_a");
    const double b = facts_.number(key + "_b").value;
    return Property<Stress>{pascals(a.value * std::pow(*gravity, b)), true, a.cite.text(),
                            fmt::format("estimated from specific gravity {} by S = a G^b", write_number(*gravity, 3))};
}

std::optional<double> StateMaker::green_ratio(std::string_view name) const
{
    const auto dry = estimate(name, false), green = estimate(name, true);
    if (!dry || !green) return std::nullopt;
    return green->value.value() / dry->value.value();
}

std::optional<Property<Stress>> StateMaker::compression_by_own(const OwnStrength& own) const
{
    if (!own.bending_strength) return std::nullopt;
    const auto of = [&](std::string_view name, const char* letter) -> const Datum<double>& {
        return facts_.number(fmt::format("regression_{}_dry_{}_{}", name, word_of_kind(kind_), letter));
    };
    double gravity = std::pow(own.bending_strength->value() / of("bending", "a").value, 1 / of("bending", "b").value);
    std::string from = "bending strength";
    const double water = 1000 * (1 + kDryRow / 100); // kg/m³ of a wood of specific gravity 1 at 12 %
    if (own.density && own.density->value() / water < gravity) {
        gravity = own.density->value() / water;
        from = "density";
    }
    const Datum<double>& a = of("compression_along", "a");
    return Property<Stress>{pascals(a.value * std::pow(gravity, of("compression_along", "b").value)), true, a.cite.text(),
                            fmt::format("estimated from its own {}, as of a {} of specific gravity {}, S = a G^b", from,
                                        word_of_kind(kind_), write_number(gravity, 3))};
}

double StateMaker::adjusted(double dry, double green, double row_moisture) const
{
    const double m = std::min(moisture_.percent(), intersection_);
    if (intersection_ <= row_moisture) return dry;
    return dry * std::pow(dry / green, (row_moisture - m) / (intersection_ - row_moisture));
}

std::optional<Property<Stress>> StateMaker::strength(std::optional<Datum<Stress>> StrengthRow::*column, std::string_view name,
                                                     bool may_rise) const
{
    if (!wood_) return std::nullopt;
    const auto& dry = wood_->dry.*column;
    const auto& green = wood_->green.*column;
    if (!dry && !green) {
        auto guess = estimate(name, false);
        if (!guess) return std::nullopt;
        const auto ratio = green_ratio(name);
        const double at_12 = guess->value.value();
        double value = ratio ? adjusted(at_12, at_12 * *ratio, kDryRow) : at_12;
        if (!may_rise) value = std::min(value, at_12);
        guess->value = pascals(value);
        return guess;
    }
    if (!dry) {
        return Property<Stress>{green->value, false, green->cite.text(),
                                "only the green value is tabled; used as it is, which is cautious below fibre saturation"};
    }
    const double row = wood_->dry_moisture_pct, at_row = dry->value.value();
    Property<Stress> property{dry->value, false, dry->cite.text(), dry->cite.note};
    const std::string row_note = dry->cite.note.empty() ? "" : dry->cite.note + "; ";
    if (std::abs(moisture_.percent() - row) < 1e-9) return property;
    double wet = 0;
    std::string how = "own green value";
    if (green) {
        wet = green->value.value();
    } else {
        if (moisture_.percent() < row) {
            property.note = row_note + fmt::format("no green value is tabled: not raised below {} %", write_number(row, 3));
            return property;
        }
        const auto ratio = green_ratio(name);
        if (!ratio) {
            property.note = row_note + "no green value is tabled: not adjusted";
            return property;
        }
        wet = at_row * *ratio;
        how = "green value estimated by the ratio of the specific-gravity relations";
    }
    double value = adjusted(at_row, wet, row);
    if (!may_rise) value = std::min(value, at_row);
    property.value = pascals(value);
    property.note = row_note + fmt::format("{} MPa at {} % brought to {}: P = P_12 (P_12/P_g)^((12 − M)/(M_p − 12)), M_p = {} %, "
                                           "{} (Wood Handbook eq. 5-3, from memory)",
                                           write_number(at_row * 1e-6, 4), write_number(row, 3), write_moisture(moisture_),
                                           write_number(intersection_, 3), how);
    return property;
}

std::optional<Property<Stress>> StateMaker::tension_across() const
{
    if (!wood_) return std::nullopt;
    const auto& dry = wood_->dry.tension_across;
    const auto& green = wood_->green.tension_across;
    if (!dry && !green) return estimate("tension_across", moisture_.percent() > kDryRow);
    if (!dry) return Property<Stress>{green->value, false, green->cite.text(), "only the green value is tabled"};
    const Property<Stress> as_dry{dry->value, false, dry->cite.text(), dry->cite.note};
    if (moisture_.percent() <= kDryRow) return as_dry;
    if (!green) {
        const auto ratio = green_ratio("tension_across");
        if (!ratio || *ratio >= 1) return as_dry;
        return Property<Stress>{dry->value * *ratio, false, dry->cite.text(),
                                "above 12 % the green value, estimated by the ratio of the specific-gravity relations"};
    }
    if (green->value >= dry->value) return as_dry;
    return Property<Stress>{green->value, false, green->cite.text(), "above 12 % the lower of the green and the dry value"};
}

std::optional<Property<Stress>> StateMaker::elastic(const std::optional<Property<Stress>>& along,
                                                    std::optional<Datum<double>> ElasticRatios::*ratio,
                                                    std::string_view name) const
{
    if (!along) return std::nullopt;
    const auto make = [&](double value, bool estimated, std::string source, std::string note) {
        return Property<Stress>{along->value * value, estimated || along->estimated, std::move(source), std::move(note)};
    };
    if (wood_ && wood_->elastic.*ratio) {
        const Datum<double>& own = *(wood_->elastic.*ratio);
        return make(own.value, false, own.cite.text(), fmt::format("ratio {} to E_L", write_number(own.value, 3)));
    }
    if (wood_ && !wood_->elastic.like.empty())
        if (const WoodRecord* relative = facts_.find_wood(wood_->elastic.like); relative && relative->elastic.*ratio) {
            const Datum<double>& other = *(relative->elastic.*ratio);
            return make(
                other.value, true, other.cite.text(),
                fmt::format("ratio {} to E_L of {} ({})", write_number(other.value, 3), relative->name, wood_->elastic.like_why));
        }
    const Datum<double>& median = facts_.number(fmt::format("median_{}_{}", name, word_of_kind(kind_)));
    return make(median.value, true, median.cite.text(),
                fmt::format("median ratio {} to E_L of listed {}s", write_number(median.value, 3), word_of_kind(kind_)));
}

std::optional<Property<Stress>> StateMaker::rolling(const std::optional<Property<Stress>>& along,
                                                    const std::optional<Property<Stress>>& tangential) const
{
    if (!along || !tangential) return std::nullopt;
    if (wood_ && wood_->elastic.shear_rt) {
        const Datum<double>& own = *wood_->elastic.shear_rt;
        return Property<Stress>{along->value * own.value, along->estimated, own.cite.text(), ""};
    }
    const Datum<double>& share = facts_.number(fmt::format("rolling_share_{}", word_of_kind(kind_)));
    return Property<Stress>{tangential->value * share.value, true, share.cite.text(),
                            fmt::format("{} of E_T", write_number(share.value, 2))};
}

/// Own test values replace the table's one by one.
void use_own(WoodState& state, const OwnStrength& own)
{
    const std::string source = "the design's own test value";
    const auto put = [&](std::optional<Property<Stress>>& slot, const std::optional<Stress>& value) {
        if (value) slot = Property<Stress>{*value, false, source, "used as given at any moisture"};
    };
    put(state.bending_strength, own.bending_strength);
    put(state.shear, own.shear_strength);
    put(state.tension_across, own.tension_across);
    put(state.shear_modulus_lr, own.shear_modulus);
    put(state.shear_modulus_lt, own.shear_modulus);
    if (own.density) state.density = Property<Density>{*own.density, false, source, ""};
}

} // namespace

WoodState wood_state(const Facts& facts, const WoodRecord* wood, const OwnStrength& own, MoistureContent moisture)
{
    const StateMaker make(facts, wood, moisture);
    WoodState state;
    state.moisture = moisture;
    state.kind = make.kind();
    state.specific_gravity = make.specific_gravity();
    state.density = make.density(state.specific_gravity);
    state.modulus_tabled = make.strength(&StrengthRow::modulus, "modulus", true);
    if (state.modulus_tabled) {
        state.modulus_along = state.modulus_tabled;
        state.modulus_along->value = state.modulus_tabled->value * facts.number("shear_free_factor").value;
        state.modulus_along->note += (state.modulus_along->note.empty() ? "" : "; ") +
                                     std::string("1.10 × the tabled value, which has shear deflection in it");
    }
    if (own.modulus) {
        const double factor = facts.number("shear_free_factor").value;
        state.modulus_along = Property<Stress>{*own.modulus, false, "the design's own test value", "free of shear"};
        state.modulus_tabled = Property<Stress>{*own.modulus / factor, false, "the design's own test value", "over 1.10"};
    }
    state.bending_strength = make.strength(&StrengthRow::bending_strength, "bending", true);
    state.compression_along = make.strength(&StrengthRow::compression_along, "compression_along", true);
    state.shear = make.strength(&StrengthRow::shear, "shear", false);
    state.compression_across = make.strength(&StrengthRow::compression_across, "compression_across", false);
    state.tension_across = make.tension_across();
    state.modulus_tangential = make.elastic(state.modulus_along, &ElasticRatios::tangential, "tangential");
    state.modulus_radial = make.elastic(state.modulus_along, &ElasticRatios::radial, "radial");
    state.shear_modulus_lr = make.elastic(state.modulus_along, &ElasticRatios::shear_lr, "shear_lr");
    state.shear_modulus_lt = make.elastic(state.modulus_along, &ElasticRatios::shear_lt, "shear_lt");
    state.shear_modulus_rt = make.rolling(state.modulus_along, state.modulus_tangential);
    use_own(state, own);
    if (!state.compression_along) state.compression_along = make.compression_by_own(own);
    return state;
}

} // namespace jointwright
