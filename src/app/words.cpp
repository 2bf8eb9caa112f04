#include "app/words.hpp"

#include "report/words/wrap.hpp"

#include <boost/nowide/utf/convert.hpp>

#include <algorithm>
#include <sstream>

namespace jointwright {

namespace {

bool starts_a_block(std::string_view line)
{
    const std::size_t first = line.find_first_not_of(' ');
    if (first == std::string_view::npos) return true;
    const std::string_view rest = line.substr(first);
    return rest.front() == '#' || rest.front() == '|' || rest.front() == '>' || first >= 4;
}

/// Length of a list mark such as "* ", "- " or "12. " with the spaces before it; 0: no list.
std::size_t list_mark(std::string_view line)
{
    const std::size_t first = line.find_first_not_of(' ');
    if (first == std::string_view::npos) return 0;
    std::size_t end = first;
    if (line[first] == '*' || line[first] == '-' || line[first] == '+') {
        end = first + 1;
    } else {
        while (end < line.size() && line[end] >= '0' && line[end] <= '9') ++end;
        if (end == first || end >= line.size() || line[end] != '.') return 0;
        ++end;
    }
    return end < line.size() && line[end] == ' ' ? end + 1 : 0;
}

/// Gathers the lines of a paragraph or list entry and writes it out wrapped.
class Paragraph {
public:
    explicit Paragraph(std::string& out) : out_(out) {}
    void start(std::string_view line, std::size_t mark)
    {
        flush();
        first_ = std::string(line.substr(0, mark));
        text_ = std::string(line.substr(mark));
    }
    void add(std::string_view line)
    {
        if (text_.empty()) return start(line, 0);
        text_ += ' ';
        text_ += line;
    }
    void flush()
    {
        if (!text_.empty()) out_ += wrapped_after(first_, text_);
        text_.clear();
    }

private:
    std::string& out_;
    std::string first_, text_;
};

} // namespace

std::string valid_utf8(std::string_view text)
{
    return boost::nowide::utf::convert_string<char>(text.data(), text.data() + text.size());
}

std::string small_letters(std::string_view text)
{
    std::string small(text);
    for (char& c : small)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return small;
}

std::string wrapped_after(const std::string& first, std::string_view text)
{
    return wrapped(text, kLineWidth, plain_lead(first));
}

std::string wrapped_markdown(std::string_view markdown)
{
    std::istringstream lines{std::string(markdown)};
    std::string out, line;
    Paragraph paragraph(out);
    bool code = false;
    while (std::getline(lines, line)) {
        const bool fence = line.rfind("```", 0) == 0;
        const std::size_t mark = list_mark(line);
        if (code || fence || (mark == 0 && starts_a_block(line))) {
            paragraph.flush();
            out += line + '\n';
            code = fence ? !code : code;
        } else if (mark != 0) {
            paragraph.start(line, mark);
        } else {
            paragraph.add(line);
        }
    }
    paragraph.flush();
    return out;
}

std::string as_typed(std::string_view argument)
{
    const auto plain = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
               std::string_view("-_./,:+=%@").find(c) != std::string_view::npos;
    };
    if (!argument.empty() && std::all_of(argument.begin(), argument.end(), plain)) return std::string(argument);
    // Double quotes read best; a text that holds one, or what a shell expands inside them, goes between single quotes.
    if (argument.find_first_of("\"$`\\!") == std::string_view::npos) return '"' + std::string(argument) + '"';
    std::string quoted = "'";
    for (const char c : argument) {
        if (c == '\'')
            quoted += "'\\''";
        else
            quoted += c;
    }
    return quoted + "'";
}

} // namespace jointwright
