#include "review/search/size_search.hpp"

#include "judging/finding_tools.hpp"
#include "measure/write.hpp"

#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>

namespace jointwright {

namespace {

constexpr double kRatio = 1.189207115002721;          // fourth root of 2
constexpr int kTowards = 12, kAway = 8;               // steps: a factor of 8, of 4
constexpr double kLeastSize = 0.5e-3, kMostSize = 20; // m
constexpr double kCloseEnough = 1e-6;                 // m
constexpr std::uintmax_t kMostSteps = 40;

class SizeSweep {
public:
    SizeSweep(const Variation& variation, const Piece& piece, const Facts& facts, std::size_t part, VariedSize what,
              LengthUnit units)
        : trials_(variation, piece, facts, units), part_(piece.parts[part].id), units_(units),
          towards_(what == VariedSize::length ? 1 : -1), drawn_(in_metres(variation.as_drawn()))
    {
    }

    SizeSearch run()
    {
        result_.as_drawn = metres(drawn_);
        const Trial& now = trial(0);
        yardstick_ = yardstick_of(now);
        if (!passes(now, yardstick_)) sort_out(now);
        result_.passes_as_drawn = passes(now, yardstick_);
        for (const FindingKey& key : yardstick_.aside) result_.aside.push_back(*now.find(key));
        for (const auto& [key, verdict] : yardstick_.advice) result_.advice.push_back(*now.find(key));
        if (const auto start = passing_step()) find_border(*start);
        if (!result_.passes_at)
            for (const Finding& f : now.findings)
                if (!yardstick_.allows(f)) result_.in_the_way.push_back(f);
        result_.worked_out = trials_.worked_out();
        return std::move(result_);
    }

    HeldSide held() const { return trials_.held(); }

private:
    /// Size after so many steps towards the border (negative: away from it).
    double size(int step) const { return drawn_ * std::pow(kRatio, step * towards_); }
    bool in_range(int step) const { return size(step) >= kLeastSize && size(step) <= kMostSize; }
    const Trial& trial(int step) { return trials_.at(metres(size(step))); }

    /// Which of the findings that do not pass as drawn the size can do nothing about: found by going all the way.
    void sort_out(const Trial& now)
    {
        for (const auto& [direction, most] : {std::pair(-1, kAway), std::pair(1, kTowards)})
            for (int k = 1; k <= most && in_range(k * direction) && trial(k * direction).possible; ++k) {
            }
        set_aside_what_stays(yardstick_, now, trials_.all(), part_);
    }

    /// The passing step nearest to the drawn size, those away from the border first.
    std::optional<int> passing_step()
    {
        for (const auto& [direction, most] : {std::pair(-1, kAway), std::pair(1, kTowards)})
            for (int k = 0; k <= most && in_range(k * direction); ++k) {
                const Trial& here = trial(k * direction);
                if (passes(here, yardstick_)) return k * direction;
                if (here.possible) continue;
                result_.no_further.push_back({metres(size(k * direction)), std::nullopt, here.why});
                break;
            }
        return std::nullopt;
    }

    void find_border(int step)
    {
        while (step < kTowards && in_range(step + 1)) {
            if (!passes(trial(step + 1), yardstick_)) {
                set_border(border(size(step), size(step + 1)));
                return;
            }
            ++step;
        }
        result_.passes_at = metres(size(step));
        result_.end_of_search = true;
        result_.passing = side_at(size(step), trial(0));
    }

    /// The last size that passes between one that does and one that does not.
    double border(double good, double bad)
    {
        const auto beyond = [&](double at) { return margin(trials_.at(metres(at)), yardstick_); };
        const auto close = [](double a, double b) { return std::abs(a - b) <= kCloseEnough; };
        std::uintmax_t steps = kMostSteps;
        const double lo = std::min(good, bad), hi = std::max(good, bad);
        const auto [a, b] = boost::math::tools::toms748_solve(beyond, lo, hi, beyond(lo), beyond(hi), close, steps);
        return passes(trials_.at(metres(a)), yardstick_) ? a : b;
    }

    void set_border(double edge)
    {
        result_.passes_at = metres(edge);
        // Whole milling steps on either side: what a maker can set a planer or a saw to.
        const double step = in_metres(round_up_to_milling_step(metres(kCloseEnough), units_));
        const double steps = edge / step, slack = kCloseEnough / step;
        double good = (towards_ < 0 ? std::ceil(steps - slack) : std::floor(steps + slack)) * step, bad = good + towards_ * step;
        if (good <= 0 || !passes(trials_.at(metres(good)), yardstick_)) good = edge;
        while (bad > kLeastSize && passes(trials_.at(metres(bad)), yardstick_) && std::abs(bad - edge) < 4 * step)
            bad += towards_ * step;
        if (bad <= kLeastSize) bad = edge + towards_ * kCloseEnough * 2;
        const Trial &inside = trials_.at(metres(good)), &outside = trials_.at(metres(bad));
        result_.passing = side_at(good, outside.possible ? outside : trial(0));
        result_.failing = side_at(bad, inside);
        // What fails beyond the border is what governs before it too, though something that hardly hangs on the size may use more.
        if (!result_.failing->governs) return;
        if (const Finding* same = inside.find(key_of(*result_.failing->governs))) result_.passing->governs = *same;
    }

    SizeSide side_at(double at, const Trial& other)
    {
        const Trial& here = trials_.at(metres(at));
        SizeSide side;
        side.size = metres(at);
        side.why_not = here.why;
        if (const Finding* finding = governing(here, other, yardstick_)) side.governs = *finding;
        return side;
    }

    SizeTrials trials_;
    std::string part_;
    LengthUnit units_;
    int towards_;
    double drawn_;
    Yardstick yardstick_;
    SizeSearch result_;
};

} // namespace

SizeSearch search_size(std::string_view text, const Piece& piece, const Facts& facts, std::size_t part, VariedSize what,
                       LengthUnit units)
{
    const Variation variation(text, piece, facts, part, what);
    SizeSearch result;
    result.as_drawn = variation.as_drawn();
    result.hindrance = variation.hindrance();
    if (result.hindrance) return result;
    SizeSweep sweep(variation, piece, facts, part, what, units);
    result = sweep.run();
    result.held = variation.words(sweep.held());
    return result;
}

} // namespace jointwright
