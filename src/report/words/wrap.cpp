#include "report/words/wrap.hpp"

#include "measure/text.hpp"
#include "report/words/display_width.hpp"
#include "report/words/safe_text.hpp"

#include <algorithm>
#include <array>
#include <vector>

namespace jointwright {

namespace {

using Word = std::u32string;

bool is_unit(const Word& word)
{
    static constexpr std::array<std::u32string_view, 14> kUnits{U"in", U"mm", U"cm", U"m",   U"%",   U"MPa", U"GPa",
                                                                U"N",  U"kg", U"lb", U"lbf", U"in²", U"cm²", U"kg/m³"};
    std::u32string_view bare = word;
    while (!bare.empty() && std::u32string_view{U".,;:)"}.find(bare.back()) != std::u32string_view::npos) bare.remove_suffix(1);
    return std::find(kUnits.begin(), kUnits.end(), bare) != kUnits.end();
}

bool is_fraction(const Word& word) { return is_digit(word.front()) && word.find(U'/') != Word::npos; }

/// A number stays with its unit and its fraction: `17 1/8 in` is one word for the eye.
bool stay_together(const Word& before, const Word& after)
{
    return is_digit(before.back()) && (is_unit(after) || is_fraction(after));
}

std::vector<Word> words_of(const std::u32string& text)
{
    std::vector<Word> words;
    Word last; // the last word as written, before it was put together with others
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find(U' ', from), text.size());
        Word word = text.substr(from, end - from);
        from = end + 1;
        if (!words.empty() && stay_together(last, word))
            words.back() += U' ' + word;
        else
            words.push_back(word);
        last = std::move(word);
    }
    return words;
}

/// As many of the word's first characters as fit, at least one, with the marks that belong to the last of them.
std::size_t fitting_characters(const Word& word, int room)
{
    ColumnCounter counter;
    int used = 0;
    std::size_t count = 0;
    for (const char32_t c : word) {
        const int added = counter.add(c);
        const bool widens_last = added > 0 && columns_of(c) == 0;
        if (count > 0 && used + added > room) return widens_last && count > 1 ? count - 1 : count;
        used += added;
        ++count;
    }
    return count;
}

class Lines {
public:
    Lines(int columns, const Lead& lead, int hanging) : columns_(columns), used_(lead.columns), out_(lead.text)
    {
        hanging_ = std::min(hanging < 0 ? lead.columns : hanging, std::max(columns - 2, 0));
        start_ = used_;
    }

    void add(const Word& word)
    {
        const int wide = columns_of(std::u32string_view{word});
        const int gap = used_ > start_ ? 1 : 0;
        if (used_ + gap + wide <= columns_) return put(word, wide, gap);
        if (hanging_ + wide <= columns_) {
            break_line();
            return put(word, wide, 0);
        }
        add_in_pieces(word, gap);
    }

    std::string finish()
    {
        out_ += '\n';
        return std::move(out_);
    }

private:
    void put(const Word& word, int wide, int gap)
    {
        if (gap) out_ += ' ';
        out_ += to_utf8(word);
        used_ += gap + wide;
    }

    void break_line()
    {
        out_ += '\n';
        out_.append(static_cast<std::size_t>(hanging_), ' ');
        used_ = start_ = hanging_;
    }

    /// A word longer than a whole line: it begins where the line stands and goes on over as many lines as it needs.
    void add_in_pieces(Word word, int gap)
    {
        constexpr int kWidestCharacter = 2;
        if (columns_ - used_ - gap < kWidestCharacter) {
            break_line();
            gap = 0;
        }
        while (!word.empty()) {
            const std::size_t count = fitting_characters(word, columns_ - used_ - gap);
            const Word piece = word.substr(0, count);
            put(piece, columns_of(std::u32string_view{piece}), gap);
            word.erase(0, count);
            gap = 0;
            if (!word.empty()) break_line();
        }
    }

    int columns_, hanging_ = 0, used_ = 0, start_ = 0;
    std::string out_;
};

} // namespace

Lead plain_lead(std::string text)
{
    const int columns = columns_of(std::string_view{text});
    return {std::move(text), columns};
}

Lead indent(int columns) { return {std::string(static_cast<std::size_t>(columns), ' '), columns}; }

std::string wrapped(std::string_view text, int columns, const Lead& lead, int hanging)
{
    Lines lines(columns, lead, hanging);
    for (const Word& word : words_of(safe_characters(text))) lines.add(word);
    return lines.finish();
}

} // namespace jointwright
