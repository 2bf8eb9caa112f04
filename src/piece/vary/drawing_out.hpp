#pragma once
// What moves and what grows when a part is made longer and the piece is drawn out with it. SI doubles: metres.

#include "piece/model/piece.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// Shares of the part's growth: 0 stays, 1 moves or grows by all of it.
struct DrawnCopy {
    double shift = 0; ///< of the near side
    double growth = 0;
};

/// How a piece is drawn out along one axis.
class DrawingOut {
public:
    /// @param part  whose copies grow along their grain
    DrawingOut(const Piece& piece, std::size_t part);

    Axis axis() const { return axis_; }
    const DrawnCopy& copy(std::size_t index) const { return copies_[index]; }
    /// Growth that all copies of a part share.
    double growth_of(std::size_t part) const;
    /// Share by which a place of no part moves: a load, say.
    double shift_at(double place) const;
    /// Share by which the whole piece grows: the number of stretches that lie one behind the other.
    double whole() const { return static_cast<double>(stretches_.size()); }
    /// Why it cannot be done, in words.
    const std::optional<std::string>& hindrance() const { return hindrance_; }

private:
    struct Stretch {
        double from, to;
    };
    void find_stretches(std::size_t part);
    void draw_copies(std::size_t part);
    void spread_rows();
    void check_growths();
    double share_along(const Stretch& stretch, double place) const
    {
        return (place - stretch.from) / (stretch.to - stretch.from);
    }

    const Piece& piece_;
    Axis axis_;
    std::vector<Stretch> stretches_; ///< rising, apart
    std::vector<DrawnCopy> copies_;
    std::optional<std::string> hindrance_;
};

} // namespace jointwright
