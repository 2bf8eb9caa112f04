#pragma once
// A page of plain text under construction: headings, paragraphs, list items, each within the width.

#include "report/text/text.hpp"
#include "report/words/wrap.hpp"

#include <string>
#include <string_view>

namespace jointwright {

class TextPage {
public:
    explicit TextPage(const TextOptions& options);

    void blank();
    void heading(std::string_view words);
    /// A paragraph behind a lead; without `hanging` its further lines stand under the first word.
    void paragraph(std::string_view words, const Lead& lead = {}, int hanging = -1);
    /// "  remedy: ..." with the words set in; nothing when they are empty.
    void labelled(int set_in, std::string_view label, std::string_view words);
    /// The verdict's word in capitals, coloured where colour is wanted, padded to `columns`, with a text behind it.
    Lead verdict_lead(Verdict verdict, std::string_view behind, int columns = 0) const;

    std::string take() { return std::move(text_); }

private:
    int columns_;
    bool colour_;
    std::string text_;
};

/// The working of a calculation, numbered, each step with formula, numbers, result and source.
void write_working(TextPage& page, const Working& working, LengthUnit units, int set_in);

} // namespace jointwright
