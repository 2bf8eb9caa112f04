#include "facts/names.hpp"

#include "facts/facts.hpp"

#include <algorithm>
#include <cctype>

namespace jointwright {

namespace {

constexpr std::size_t kLongestName = 200; // bytes of a name that are compared

std::vector<std::string> words_of(std::string_view name)
{
    std::vector<std::string> words;
    std::string word;
    for (const char raw : name.substr(0, kLongestName)) {
        const auto c = static_cast<unsigned char>(raw);
        if (c == '\'') continue;
        if (std::isalnum(c) || c >= 0x80) {
            word += static_cast<char>(std::tolower(c));
        } else if (!word.empty()) {
            words.push_back(std::move(word));
            word.clear();
        }
    }
    if (!word.empty()) words.push_back(std::move(word));
    return words;
}

/// Whether all the words of `few` are among those of `many`; both sorted.
bool all_among(const std::vector<std::string>& few, const std::vector<std::string>& many)
{
    return !few.empty() && std::includes(many.begin(), many.end(), few.begin(), few.end());
}

std::vector<std::string> sorted_words_of(std::string_view name)
{
    std::vector<std::string> words = words_of(name);
    std::sort(words.begin(), words.end());
    return words;
}

std::string joined(const std::vector<std::string>& words, std::string_view between)
{
    std::string text;
    for (const std::string& word : words) {
        if (!text.empty()) text += between;
        text += word;
    }
    return text;
}

} // namespace

std::string normal_form(std::string_view name) { return joined(sorted_words_of(name), " "); }

std::string compact_form(std::string_view name) { return joined(words_of(name), ""); }

std::string slug_of(std::string_view name) { return joined(words_of(name), "-"); }

std::size_t edit_distance(std::string_view a, std::string_view b)
{
    std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), now(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        now[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            now[j] = std::min({last[j] + 1, now[j - 1] + 1, last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1)});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) now[j] = std::min(now[j], before[j - 2] + 1);
        }
        before.swap(last);
        last.swap(now);
    }
    return last[b.size()];
}

std::vector<std::string> nearest_spellings(std::string_view wanted, const std::vector<std::string>& known, std::size_t most)
{
    const std::string sorted = normal_form(wanted), plain = compact_form(wanted);
    const std::vector<std::string> words = sorted_words_of(wanted);
    std::vector<std::pair<std::size_t, std::string>> ranked;
    for (const std::string& name : known) {
        const std::string other = normal_form(name);
        std::size_t distance = std::min(edit_distance(sorted, other), edit_distance(plain, compact_form(name)));
        // Words that all occur in the known name are nearer than letters alone can tell: "maple" is nearer to "sugar maple" than to "apple".
        if (all_among(words, sorted_words_of(name))) distance = std::min(distance, std::size_t{1});
        ranked.emplace_back(distance, name);
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<std::string> best;
    const std::size_t bound = std::max<std::size_t>(1, plain.size() / 2); // half of the letters wrong is another word
    for (const auto& [distance, name] : ranked) {
        if (best.size() == most || distance > bound) break;
        if (std::find(best.begin(), best.end(), name) == best.end()) best.push_back(name);
    }
    return best;
}

} // namespace jointwright
