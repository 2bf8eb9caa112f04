#pragma once
// The finite-element program CalculiX (`ccx`, Debian package calculix-ccx) as a reference from outside: a frame or a body of solids goes out as its
// input, movements come back. Nothing of it is linked or shipped; where it is not installed the tests that ask it say so and are counted as skipped.

#include "mechanics/frame/frame.hpp"

#include <optional>
#include <string>
#include <vector>

namespace outside {

namespace kernel = jointwright::kernel;

/// Where `ccx` is on the PATH; nothing when it is not installed.
std::optional<std::string> ccx_program();

/// The words by which tests/CMakeLists.txt tells ctest that a test did not run.
constexpr const char* kSkipped = "SKIPPED: the finite-element program ccx (Debian package calculix-ccx) is not installed here";

/// Movement of every node [m], by load case.
using Movements = std::vector<std::vector<kernel::Vec3>>;

/// Solves an input in a folder of its own that vanishes.
/// @param nodes  how many of its first nodes are wanted back
/// @throws std::runtime_error  the program fails, with its last words
Movements run_ccx(const std::string& input, std::size_t nodes);

/// Load cases of a frame, each some forces on nodes; moments are not handed over.
using ForceCases = std::vector<std::vector<kernel::NodeLoad>>;

/// Movements of the nodes of a frame of beams, as ccx has them.
///
/// Each beam becomes two elements B32R, which the program turns into solids of twenty nodes. These bend as beam theory says. One such solid shears
/// evenly over its depth, so its shear area is the whole section, and it twists by 4 I₁ I₂/(I₁ + I₂): the frame must be made with the same
/// (`solid_section`). The program's own two-node beam U1 would be nearer, but bends wrongly about its second axis in version 2.20: two elements in a
/// row differ in sign there.
///
/// A tie must be stiff (from 1e11 N/m, N m/rad on) in each movement that it holds. To the ground it holds its node; between two nodes at one place it
/// makes them one; else it is a rigid link, a beam a few thousand times stiffer than the stiffest.
/// @throws std::logic_error  plates, soft ties, pressing contacts, sections that are no rectangle
Movements ccx_movements(const kernel::Frame& frame, const ForceCases& cases);

/// Section b along y by h along z as one quadratic solid takes it.
kernel::BeamSection solid_section(double modulus, double shear_modulus, double b, double h);

/// Elastic figures along x (grain), y and z; contraction left out.
struct SolidWood {
    double x = 0, y = 0, z = 0, xy = 0, xz = 0, yz = 0; ///< Pa
};

/// A body of bricks between planes, some left out; twenty-node solids C3D20R.
class Bricks {
public:
    /// @param left_out  by cell (i, j, k)
    Bricks(std::vector<double> x, std::vector<double> y, std::vector<double> z, SolidWood wood);
    void leave_out(std::size_t i, std::size_t j, std::size_t k) { out_[cell(i, j, k)] = true; }
    /// Node at twice the plane's number (odd: the middle between two); −1 where there is none.
    int node(std::size_t i2, std::size_t j2, std::size_t k2);
    /// Holds a node in a direction, 0 to 2.
    void hold(int node, int direction) { holds_.emplace_back(node, direction); }
    /// Even pressure down on the top of a cell [Pa].
    void press_on(std::size_t i, std::size_t j, std::size_t k, double pressure)
    {
        pressed_.emplace_back(cell(i, j, k), pressure);
    }
    std::string input();
    std::size_t nodes() const { return places_.size(); }

private:
    std::size_t cell(std::size_t i, std::size_t j, std::size_t k) const
    {
        return (i * (y_.size() - 1) + j) * (z_.size() - 1) + k;
    }
    std::vector<double> x_, y_, z_;
    SolidWood wood_;
    std::vector<bool> out_;
    std::vector<int> at_; ///< nodes by place in the doubled grid; −1: none yet
    std::vector<kernel::Vec3> places_;
    std::vector<std::pair<int, int>> holds_;
    std::vector<std::pair<std::size_t, double>> pressed_;
};

} // namespace outside
