#pragma once
// SI doubles: metres, newtons, pascals. A straight Timoshenko beam on rigid supports, factored once and solved for many loads.

#include <Eigen/Core>
#include <Eigen/SparseCholesky>

#include <memory>
#include <vector>

namespace jointwright::kernel {

/// A stretch of beam with one section.
struct BeamCell {
    double from, to; ///< along the beam
    double bending;  ///< E I [N m²]
    double shear;    ///< G A' [N]; 0: shear deflection left out
};

/// A force spread evenly from one place to another; a point where they agree. Positive down.
struct BeamLoad {
    double from, to, force;
};

/// Values at the nodes, two entries for each element (its left and its right end).
struct BeamResponse {
    std::vector<double> at;        ///< places
    std::vector<double> sag;       ///< positive down [m]
    std::vector<double> moment;    ///< sagging positive [N m]
    std::vector<double> shear;     ///< [N]
    std::vector<double> reactions; ///< upwards, in the order of the supports [N]
};

/// Beam elements with shear, cubic between nodes; nodes at cell ends, supports and at least every `length/24`.
/// With a single support the beam is held against turning there: a cantilever to both sides.
class Beam {
public:
    /// @param cells     in order, without gaps
    /// @param supports  places within the beam, rising
    /// @param built_in  by support: held against turning too; shorter: the others are free to turn
    Beam(const std::vector<BeamCell>& cells, std::vector<double> supports, const std::vector<bool>& built_in = {});
    /// Response to loads that act together. Loads beyond an end are taken at the end.
    BeamResponse solve(const std::vector<BeamLoad>& loads) const;
    const std::vector<double>& supports() const { return supports_; }

private:
    struct Element {
        double from, length, bending, ratio; // ratio: 12 E I/(G A' L²)
    };
    using Factor = Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>, Eigen::Lower, Eigen::NaturalOrdering<int>>;
    void place_nodes(const std::vector<BeamCell>& cells);
    void hold(const std::vector<bool>& built_in);
    void factorise();
    Eigen::Matrix4d stiffness(const Element& element) const;
    void add_load(Eigen::VectorXd& nodal, std::vector<Eigen::Vector4d>& equivalent, const BeamLoad& load) const;

    std::vector<double> nodes_, supports_;
    std::vector<Element> elements_;
    std::vector<int> free_of_; // index among the free unknowns, −1 held
    std::vector<int> support_node_;
    int free_ = 0;
    std::shared_ptr<const Factor> factor_; // nodes in a row: the matrix is a narrow band and fills nowhere
};

} // namespace jointwright::kernel
