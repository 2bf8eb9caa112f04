#include "catch.hpp"

#include "report/charts/plot.hpp"

#include <boost/property_tree/ptree.hpp>
#include <boost/property_tree/xml_parser.hpp>

#include <sstream>

using namespace jointwright;

namespace {

boost::property_tree::ptree tree_of(const std::string& svg)
{
    std::istringstream in(svg);
    boost::property_tree::ptree tree;
    boost::property_tree::read_xml(in, tree); // throws where tags do not match
    return tree;
}

PlotPage sample_plot()
{
    PlotPage page;
    page.title = "A <shelf> & its load";
    page.says = "Largest sag 3 mm.";
    page.from = 0;
    page.to = 900;
    page.across = "place, mm";
    page.guides = {0, 900};
    page.panels.push_back({"Shear, N", {{{0, 900}, {180, -180}, true, false}}, {{0, 180, "180 N"}}});
    page.panels.push_back({"Sag, mm", {{{0, 450, 900}, {0, 3, 0}, true, false}}, {{450, 3, "3 mm"}}, true});
    return page;
}

} // namespace

TEST_CASE("Round ticks lie within the bounds, 1, 2 or 5 times a power of ten apart", "[plot]")
{
    CHECK(plot_ticks(0, 900, 6) == std::vector<double>{0, 200, 400, 600, 800});
    CHECK(plot_ticks(-1, 1, 4) == std::vector<double>{-1, -0.5, 0, 0.5, 1});
    CHECK(plot_ticks(3, 3, 4).empty());
    for (const double hi : {0.0013, 0.7, 42.0, 9.9e5}) {
        const auto ticks = plot_ticks(0, hi, 5);
        CAPTURE(hi);
        CHECK(ticks.size() >= 2);
        CHECK(ticks.size() <= 6);
        CHECK(ticks.back() <= hi);
    }
}

TEST_CASE("A chart is well-formed, has title and description, and escapes what it is told", "[plot]")
{
    const std::string svg = plot_svg(sample_plot());
    const auto tree = tree_of(svg);
    CHECK(tree.get<std::string>("svg.title") == "A <shelf> & its load");
    CHECK(tree.get<std::string>("svg.desc") == "Largest sag 3 mm.");
    CHECK(tree.get<std::string>("svg.<xmlattr>.role") == "img");
    CHECK_THAT(svg, ContainsSubstring("A &lt;shelf&gt; &amp; its load"));
    CHECK_THAT(svg, ContainsSubstring(">180 N</text>"));
    CHECK(svg.find("url(") == std::string::npos);
    CHECK(svg.find(" id=") == std::string::npos); // several charts may stand in one page
}

TEST_CASE("A long heading is broken into lines that fit the page", "[plot]")
{
    PlotPage page = sample_plot();
    page.title = "Beam 280 mm × 18 mm (depth), span 1800 mm, eastern white pine at 12 %";
    const std::string svg = plot_svg(page);
    std::size_t lines = 0, at = 0;
    while ((at = svg.find("font-weight=\"600\">", at)) != std::string::npos) {
        at = svg.find('>', at) + 1;
        const std::string words = svg.substr(at, svg.find('<', at) - at);
        CHECK(words.size() < 48);
        lines += words.find("mm (depth)") != std::string::npos || words.find("at 12 %") != std::string::npos;
    }
    CHECK(lines == 2);
}

TEST_CASE("A sag is drawn downwards, a force upwards", "[plot]")
{
    PlotPage page = sample_plot();
    page.panels.erase(page.panels.begin());
    const auto height_of_mark = [](const std::string& svg) {
        const std::size_t at = svg.find("cy=\"", svg.find("<circle"));
        return std::stod(svg.substr(at + 4));
    };
    const double down = height_of_mark(plot_svg(page));
    page.panels.front().grows_downward = false;
    CHECK(down > height_of_mark(plot_svg(page)) + 40);
}

TEST_CASE("Coordinates of a drawing have no idle digits", "[plot]")
{
    CHECK(svg_number(3) == "3");
    CHECK(svg_number(0.5) == "0.5");
    CHECK(svg_number(-0.001) == "0");
    CHECK(svg_number(12.346) == "12.35");
}
