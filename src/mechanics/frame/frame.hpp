#pragma once
// SI doubles: metres, newtons. A frame in space: nodes, beams, plates, springs between points, contacts that can only press. Factored once, solved
// for many loads.

#include "mechanics/frame/elements.hpp"
#include "mechanics/frame/floor_state.hpp"

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>

#include <array>
#include <memory>
#include <optional>
#include <vector>

namespace jointwright::kernel {

/// A point that moves with nodes: with one as if rigidly fixed to it, with several as if rigidly fixed to a point in their midst that moves and turns
/// by their weights. Within a plate cell that is the plate's own field; an arm to each node would let forces twist the nodes in the plate's plane,
/// where it hardly resists.
struct Anchor {
    struct Share {
        int node = 0;
        double weight = 1;
    };
    std::vector<Share> shares; ///< empty: the ground
};

/// A spring between two points at one place: resists the movement of the first against the second.
struct Tie {
    Vec3 at;        ///< both points in the unloaded frame
    Anchor a, b;    ///< b may be the ground
    Mat6 stiffness; ///< of the six movements at `at`, in the axes of the piece; symmetric, not negative
};

/// A spring that can only press: resists the approach of a to b along `direction`, and lets go when they part.
struct Press {
    Vec3 at;
    Anchor a, b;
    Vec3 direction;       ///< out of a into b, unit
    double stiffness = 0; ///< N/m
};

/// What keeps a foot where it stands: two level springs to the ground that give way beyond a share of what presses on it.
struct Grip {
    Vec3 at;
    Anchor a;
    std::array<Vec3, 2> directions; ///< level, unit, square to each other
    double stiffness = 0;           ///< N/m, both ways alike
    int press = -1;                 ///< the pressing contact whose force it lives on
};

/// A force and a moment on a node.
struct NodeLoad {
    int node = 0;
    Vec6 load = Vec6::Zero();
};

/// How a frame moves under one set of loads.
struct FrameSolution {
    Eigen::VectorXd movement; ///< six a node
    std::vector<int> open;    ///< contacts that have parted
    std::vector<int> slid;    ///< grips that have given way
    int rounds = 0;           ///< of opening and closing
    bool settled = true;      ///< false: some part flies off or the contacts found no rest
};

/// What moves freely where nothing holds it.
struct FreeMotion {
    Eigen::VectorXd movement; ///< six a node, the largest movement 1
    /// How much a node moves: its shift, or the way that its turning makes a tenth of a metre off.
    double at(int node) const;
};

/// The motion of a part that flies off in a solution, the largest movement 1.
FreeMotion free_motion_of(const FrameSolution& solution);

/// A frame. Build it, `factor()`, then solve.
class Frame {
public:
    int add_node(const Vec3& at);
    int add_beam(int from, int to, const Vec3& y, const BeamSection& section);
    int add_plate(const std::array<int, 4>& nodes, double length_x, double length_y, const Mat3& axes,
                  const PlateSection& section);
    int add_tie(Tie tie);
    int add_press(Press press);
    int add_grip(Grip grip);

    int nodes() const { return static_cast<int>(places_.size()); }
    const Vec3& place(int node) const { return places_[static_cast<std::size_t>(node)]; }
    int unknowns() const { return 6 * nodes(); }

    /// Factors the stiffness with all contacts closed. A very light hold of every node to the ground keeps it regular; `free_motion` tells
    /// whether that hold is all there is.
    void factor();
    /// The softest motion, where nothing but the light hold resists it; nothing in a frame that stands. Needs `factor`.
    std::optional<FreeMotion> free_motion() const;

    /// Movement under nodal loads (six a node). Contacts that would pull are opened until every closed one presses and every open one gapes:
    /// Newton steps on a convex energy, with a search along each step, which end after finitely many.
    /// Grips that bear more than their share slide, and push back with it.
    FrameSolution solve(const Eigen::VectorXd& loads, const FloorState& floor = {}) const;
    /// The same for many loads, a column each; a floor for each of them, or none.
    std::vector<FrameSolution> solve_all(const Eigen::MatrixXd& loads, const std::vector<FloorState>& floors = {}) const;

    /// Forces of a tie on its second point, as (force, moment) at its place: what a hands to b.
    Vec6 tie_force(int tie, const Eigen::VectorXd& movement) const;
    /// Likewise for a pressing contact; zero when it is open.
    Vec6 press_force(int press, const Eigen::VectorXd& movement) const;
    /// What a grip that has not given way hands to the ground [N].
    Vec3 grip_force(int grip, const Eigen::VectorXd& movement) const;
    /// Movement of the first point of a tie against the second, at its place.
    Vec6 tie_movement(int tie, const Eigen::VectorXd& movement) const;
    /// Gap of a pressing contact [m], negative while it presses.
    double gap(int press, const Eigen::VectorXd& movement) const;
    Vec12 beam_movement(int beam, const Eigen::VectorXd& movement) const;
    Vec24 plate_movement(int plate, const Eigen::VectorXd& movement) const;
    const BeamElement& beam(int i) const { return beams_[static_cast<std::size_t>(i)].element; }
    const PlateElement& plate(int i) const { return plates_[static_cast<std::size_t>(i)].element; }
    const std::array<int, 2>& beam_nodes(int i) const { return beams_[static_cast<std::size_t>(i)].nodes; }
    const std::array<int, 4>& plate_nodes(int i) const { return plates_[static_cast<std::size_t>(i)].nodes; }
    int beams() const { return static_cast<int>(beams_.size()); }
    int plates() const { return static_cast<int>(plates_.size()); }
    int ties() const { return static_cast<int>(ties_.size()); }
    int presses() const { return static_cast<int>(presses_.size()); }
    int grips() const { return static_cast<int>(grips_.size()); }
    const Grip& grip(int i) const { return grips_[static_cast<std::size_t>(i)]; }
    /// Another stiffness for a tie; `factor` afterwards.
    void set_tie_stiffness(int i, const Mat6& stiffness) { ties_[static_cast<std::size_t>(i)].stiffness = stiffness; }
    const Tie& tie(int i) const { return ties_[static_cast<std::size_t>(i)]; }

private:
    struct Beam {
        std::array<int, 2> nodes;
        BeamElement element;
    };
    struct Plate {
        std::array<int, 4> nodes;
        PlateElement element;
    };
    using Sparse = Eigen::SparseMatrix<double>;

    Vec3 middle_of(const Anchor& anchor) const;
    Vec6 movement_at(const Anchor& anchor, const Vec3& at, const Eigen::VectorXd& movement) const;
    /// Springs that give way: the pressing contacts, then both directions of each grip.
    int yielding() const { return presses() + 2 * grips(); }
    double yielding_stiffness(int i) const;
    /// Movement that a force of one across such a spring makes, against what it would give; kept once made.
    const Eigen::VectorXd& response_of(int spring) const;
    friend class Yielding;

    std::vector<Vec3> places_;
    std::vector<Beam> beams_;
    std::vector<Plate> plates_;
    std::vector<Tie> ties_;
    std::vector<Press> presses_;
    std::vector<Grip> grips_;
    std::shared_ptr<Eigen::SimplicialLDLT<Sparse>> factor_;
    Eigen::SparseMatrix<double, Eigen::RowMajor> gaps_; ///< a row for each spring that gives way: gap = gaps_ · movement
    mutable std::vector<Eigen::VectorXd> responses_;
};

} // namespace jointwright::kernel
