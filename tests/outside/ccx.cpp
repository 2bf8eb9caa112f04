#include "outside/ccx.hpp"

#include "app/program.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <numeric>
#include <sstream>
#include <stdexcept>

namespace outside {

namespace {

namespace fs = std::filesystem;
using kernel::Vec3;

constexpr double kStiffTie = 1e11;     // N/m, N m/rad
constexpr double kLinkOverBeam = 3000; // a rigid link against the stiffest beam: its give is felt in the fifth digit at most
constexpr double kLinkSize = 0.05;     // m

/// Movements of the first nodes from the tables that the program prints, one a load case.
Movements read_movements(const std::string& printed, std::size_t nodes)
{
    Movements all;
    std::istringstream lines(printed);
    std::string line;
    while (std::getline(lines, line)) {
        if (line.find("displacements") != std::string::npos) {
            all.emplace_back(nodes, Vec3::Constant(std::nan("")));
            continue;
        }
        std::istringstream words(line);
        std::size_t node = 0;
        Vec3 u;
        if (all.empty() || !(words >> node >> u.x() >> u.y() >> u.z()) || node == 0 || node > nodes) continue;
        all.back()[node - 1] = u;
    }
    return all;
}

std::string elastic(const std::string& name, const SolidWood& w)
{
    return fmt::format(
        "*MATERIAL, NAME={}\n*ELASTIC, TYPE=ENGINEERING CONSTANTS\n{:.9g},{:.9g},{:.9g},0,0,0,{:.9g},{:.9g},\n{:.9g},0\n", name,
        w.x, w.y, w.z, w.xy, w.xz, w.yz);
}

std::string step_head() { return "*STEP\n*STATIC\n"; }
constexpr const char* kStepEnd = "*NODE PRINT, NSET=ALL\nU\n*END STEP\n";

std::string words_of(const Vec3& v) { return fmt::format("{:.9g},{:.9g},{:.9g}", v.x(), v.y(), v.z()); }

/// Writes a frame.
class FrameWriter {
public:
    explicit FrameWriter(const kernel::Frame& frame) : frame_(frame), one_(static_cast<std::size_t>(frame.nodes()))
    {
        if (frame.plates() > 0 || frame.presses() > 0) throw std::logic_error("only beams and stiff ties go out to ccx");
        std::iota(one_.begin(), one_.end(), 0);
        for (int t = 0; t < frame.ties(); ++t) read_tie(frame.tie(t));
        next_ = frame.nodes();
    }

    std::string write(const ForceCases& cases)
    {
        for (int b = 0; b < frame_.beams(); ++b) add_beam(b);
        for (const auto& [a, b] : links_) add_link(a, b);
        std::string text = "*NODE, NSET=ALL\n";
        for (int n = 0; n < frame_.nodes(); ++n) text += fmt::format("{},{}\n", n + 1, words_of(frame_.place(n)));
        text += more_nodes_ + elements_ + "*BOUNDARY\n";
        for (const auto& [node, stiffness] : held_)
            for (int k = 0; k < 6; ++k)
                if (stiffness(k) != 0) text += fmt::format("{},{}\n", number(node), k + 1);
        for (const auto& loads : cases) {
            text += step_head() + "*CLOAD, OP=NEW\n";
            for (const kernel::NodeLoad& l : loads) {
                // A moment of nothing to speak of makes the node a knot: its section stays flat under the load, as beam theory has it.
                text += fmt::format("{},4,1e-9\n", number(l.node));
                for (int k = 0; k < 3; ++k)
                    if (l.load(k) != 0) text += fmt::format("{},{},{:.12g}\n", number(l.node), k + 1, l.load(k));
            }
            text += kStepEnd;
        }
        return text;
    }

    /// The node that stands for one of the frame.
    int standing_for(int node) const
    {
        while (one_[static_cast<std::size_t>(node)] != node) node = one_[static_cast<std::size_t>(node)];
        return node;
    }

private:
    int number(int node) const { return standing_for(node) + 1; }

    void read_tie(const kernel::Tie& tie)
    {
        for (int k = 0; k < 6; ++k)
            if (const double s = tie.stiffness(k, k); s != 0 && s < kStiffTie)
                throw std::logic_error("a soft tie does not go out to ccx");
        if (tie.a.shares.size() != 1 || tie.b.shares.size() > 1)
            throw std::logic_error("a tie of several nodes does not go out to ccx");
        const int a = tie.a.shares[0].node;
        if (tie.b.shares.empty()) {
            if ((tie.at - frame_.place(a)).norm() > 1e-12) throw std::logic_error("ground is held at nodes only");
            held_.emplace_back(a, tie.stiffness.diagonal());
            return;
        }
        if (tie.stiffness.diagonal().minCoeff() < kStiffTie) throw std::logic_error("a hinge does not go out to ccx");
        const int b = tie.b.shares[0].node;
        if ((frame_.place(a) - frame_.place(b)).norm() < 1e-9)
            one_[static_cast<std::size_t>(standing_for(b))] = standing_for(a);
        else
            links_.emplace_back(a, b);
    }

    void add_beam(int index)
    {
        const kernel::BeamElement& beam = frame_.beam(index);
        const kernel::BeamSection& s = beam.section();
        // E A, E b³h/12 and E b h³/12 tell b and h, then E; G by the shear over the whole section.
        const double b = std::sqrt(12 * s.bending_y / s.axial), h = std::sqrt(12 * s.bending_z / s.axial), e = s.axial / (b * h),
                     g = s.shear_y / (b * h);
        const kernel::BeamSection same = solid_section(e, g, b, h);
        if (std::abs(s.twisting - same.twisting) > 1e-6 * s.twisting || std::abs(s.shear_z - s.shear_y) > 1e-6 * s.shear_y)
            throw std::logic_error("a beam that ccx cannot be asked about: make it with solid_section");
        stiffest_ = std::max(stiffest_, e);
        const auto& nodes = frame_.beam_nodes(index);
        add(number(nodes[0]), number(nodes[1]), frame_.place(nodes[0]), frame_.place(nodes[1]), beam.axes(), {e, e, e, g, g, g},
            b, h);
    }

    void add_link(int a, int b)
    {
        const Vec3 &from = frame_.place(a), &to = frame_.place(b);
        const Vec3 x = (to - from).normalized(), any = std::abs(x.z()) < 0.7 ? Vec3::UnitZ() : Vec3::UnitX();
        kernel::Mat3 axes;
        axes.row(0) = x;
        axes.row(1) = x.cross(any).normalized();
        axes.row(2) = x.cross(Vec3(axes.row(1)));
        const double e = kLinkOverBeam * stiffest_;
        add(number(a), number(b), from, to, axes, {e, e, e, e / 2, e / 2, e / 2}, kLinkSize, kLinkSize);
    }

    void add(int from, int to, const Vec3& a, const Vec3& b, const kernel::Mat3& axes, const SolidWood& wood, double width,
             double height)
    {
        const std::string name = fmt::format("B{}", ++sets_);
        // Two solids to a beam, but none shorter than it is deep: reduced integration makes such ones soft in shear.
        const int solids = (b - a).norm() < 2 * std::max(width, height) ? 1 : 2;
        elements_ += fmt::format("*ELEMENT, TYPE=B32R, ELSET={}\n", name);
        for (int k = 0, last = from; k < solids; ++k) {
            const int middle = add_node(a + (2 * k + 1) / (2.0 * solids) * (b - a));
            const int end = k + 1 == solids ? to : add_node(a + (k + 1.0) / solids * (b - a));
            elements_ += fmt::format("{},{},{},{}\n", ++solids_, last, middle, end);
            last = end;
        }
        elements_ += elastic("M" + name, wood);
        elements_ += fmt::format("*ORIENTATION, NAME=O{}, SYSTEM=RECTANGULAR\n{},{}\n", name, words_of(axes.row(0)),
                                 words_of(axes.row(1)));
        elements_ +=
            fmt::format("*BEAM SECTION, ELSET={0}, MATERIAL=M{0}, ORIENTATION=O{0}, SECTION=RECT\n{1:.9g},{2:.9g}\n{3}\n", name,
                        width, height, words_of(axes.row(1)));
    }

    int add_node(const Vec3& at)
    {
        more_nodes_ += fmt::format("{},{}\n", ++next_, words_of(at));
        return next_;
    }

    const kernel::Frame& frame_;
    std::vector<int> one_; ///< which node another is tied to without a distance
    std::vector<std::pair<int, int>> links_;
    std::vector<std::pair<int, kernel::Vec6>> held_;
    int next_ = 0, sets_ = 0, solids_ = 0;
    double stiffest_ = 0;
    std::string more_nodes_, elements_;
};

} // namespace

std::optional<std::string> ccx_program()
{
    const char* path = std::getenv("PATH");
    std::istringstream folders(path ? path : "");
    for (std::string folder; std::getline(folders, folder, ':');) {
        const fs::path program = fs::path(folder) / "ccx";
        if (!folder.empty() && access(program.c_str(), X_OK) == 0) return program.string();
    }
    return std::nullopt;
}

Movements run_ccx(const std::string& input, std::size_t nodes)
{
    const program::Folder folder;
    folder.write("piece.inp", input);
    const std::string command =
        fmt::format("cd '{}' && OMP_NUM_THREADS=1 '{}' piece >said 2>&1", folder.path().string(), ccx_program().value());
    const int status = std::system(command.c_str());
    const auto text_of = [&](const std::string& name) {
        std::ifstream file(folder.file(name));
        return std::string(std::istreambuf_iterator<char>(file), {});
    };
    const std::string said = text_of("said");
    if (status != 0 || said.find("*ERROR") != std::string::npos)
        throw std::runtime_error("ccx failed:\n" + said.substr(said.size() - std::min<std::size_t>(said.size(), 1500)));
    return read_movements(text_of("piece.dat"), nodes);
}

kernel::BeamSection solid_section(double modulus, double shear_modulus, double b, double h)
{
    const double area = b * h, y = h * b * b * b / 12, z = b * h * h * h / 12;
    return {modulus * area,       modulus * y,          modulus * z,
            shear_modulus * area, shear_modulus * area, shear_modulus * 4 * y * z / (y + z)};
}

Movements ccx_movements(const kernel::Frame& frame, const ForceCases& cases)
{
    FrameWriter writer(frame);
    const auto nodes = static_cast<std::size_t>(frame.nodes());
    Movements all = run_ccx(writer.write(cases), nodes);
    for (auto& u : all)
        for (std::size_t n = 0; n < nodes; ++n) u[n] = u[static_cast<std::size_t>(writer.standing_for(static_cast<int>(n)))];
    return all;
}

Bricks::Bricks(std::vector<double> x, std::vector<double> y, std::vector<double> z, SolidWood wood)
    : x_(std::move(x)), y_(std::move(y)), z_(std::move(z)), wood_(wood)
{
    out_.assign((x_.size() - 1) * (y_.size() - 1) * (z_.size() - 1), false);
    at_.assign((2 * x_.size() - 1) * (2 * y_.size() - 1) * (2 * z_.size() - 1), -1);
}

int Bricks::node(std::size_t i, std::size_t j, std::size_t k)
{
    int& n = at_[(i * (2 * y_.size() - 1) + j) * (2 * z_.size() - 1) + k];
    if (n >= 0) return n;
    const auto place = [](const std::vector<double>& planes, std::size_t at2) {
        return at2 % 2 == 0 ? planes[at2 / 2] : (planes[at2 / 2] + planes[at2 / 2 + 1]) / 2;
    };
    n = static_cast<int>(places_.size());
    places_.emplace_back(place(x_, i), place(y_, j), place(z_, k));
    return n;
}

std::string Bricks::input()
{
    // Corners of the lower face, of the upper, then the middles of the lower edges, of the upper, of the upright ones.
    constexpr std::array<std::array<std::size_t, 3>, 20> corner{
        {{0, 0, 0}, {2, 0, 0}, {2, 2, 0}, {0, 2, 0}, {0, 0, 2}, {2, 0, 2}, {2, 2, 2}, {0, 2, 2}, {1, 0, 0}, {2, 1, 0},
         {1, 2, 0}, {0, 1, 0}, {1, 0, 2}, {2, 1, 2}, {1, 2, 2}, {0, 1, 2}, {0, 0, 1}, {2, 0, 1}, {2, 2, 1}, {0, 2, 1}}};
    std::string elements = "*ELEMENT, TYPE=C3D20R, ELSET=BODY\n";
    for (std::size_t i = 0; i + 1 < x_.size(); ++i)
        for (std::size_t j = 0; j + 1 < y_.size(); ++j)
            for (std::size_t k = 0; k + 1 < z_.size(); ++k) {
                if (out_[cell(i, j, k)]) continue;
                elements += fmt::format("{}", cell(i, j, k) + 1);
                for (std::size_t c = 0; c < 20; ++c)
                    elements += fmt::format("{}{}", c == 9 ? ",\n" : ",",
                                            node(2 * i + corner[c][0], 2 * j + corner[c][1], 2 * k + corner[c][2]) + 1);
                elements += "\n";
            }
    std::string text = "*NODE, NSET=ALL\n";
    for (std::size_t n = 0; n < places_.size(); ++n) text += fmt::format("{},{}\n", n + 1, words_of(places_[n]));
    text += elements + elastic("WOOD", wood_) + "*ORIENTATION, NAME=GRAIN, SYSTEM=RECTANGULAR\n1,0,0,0,1,0\n" +
            "*SOLID SECTION, ELSET=BODY, MATERIAL=WOOD, ORIENTATION=GRAIN\n*BOUNDARY\n";
    for (const auto& [n, direction] : holds_) text += fmt::format("{},{}\n", n + 1, direction + 1);
    text += step_head() + "*DLOAD\n";
    for (const auto& [c, pressure] : pressed_) text += fmt::format("{},P2,{:.9g}\n", c + 1, pressure);
    return text + kStepEnd;
}

} // namespace outside
