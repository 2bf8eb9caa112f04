#pragma once
// A piece glued up in stages that the glue's open time serves and that can go together. SI doubles: seconds.

#include "mechanics/prepared.hpp"

#include <optional>
#include <string>
#include <vector>

namespace jointwright {

/// What one glued contact takes of the time its glue gives.
struct ClosingCost {
    double share = 0;     ///< of the open time, or of the time to full pressure where that is tighter; 0 for dry contacts
    double spreading = 0; ///< s
    double clamps = 0;    ///< s
};

/// Joints closed in one go.
struct GlueStage {
    std::vector<std::size_t> contacts; ///< of a stage that joins parts
    std::optional<std::size_t> part;   ///< of a stage that glues up the boards of a part
    int edges = 0;                     ///< of that
    double share = 0;                  ///< of the time that the glue gives
    double time = 0;                   ///< spreading and closing [s]
    double clamps = 0;                 ///< setting the clamps, on top of that [s]
    std::string words;                 ///< "slat #1 to #5 / long rail: 10 joints"
    std::string subject;               ///< pair or part that takes most of it
    std::string glue;                  ///< of that
};

struct StagePlan {
    std::vector<GlueStage> stages; ///< in the order of work; empty: nothing is glued
    double whole_share = 0;        ///< everything in one go
    double whole_time = 0;         ///< s
    std::size_t joints = 0;        ///< glued contacts and edges
    bool too_many = false;         ///< more parts than are looked through: one stage for each is not worked out
    std::vector<std::string> missing;
};

/// Times of closing each contact at the shop's temperature, and the stages: boards first, then groups as they can go together,
/// several steps in one stage while they fill no more than three quarters of the time.
StagePlan plan_stages(const Prepared& prepared);

} // namespace jointwright
