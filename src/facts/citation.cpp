#include "facts/citation.hpp"

namespace jointwright {

std::string_view word_of(Provenance provenance)
{
    switch (provenance) {
    case Provenance::retrieved: return "retrieved";
    case Provenance::memory: return "memory";
    case Provenance::computed: return "computed";
    case Provenance::estimated: return "estimated";
    }
    return "estimated";
}

std::string Citation::text() const
{
    std::string text = source;
    if (!where.empty()) text += (text.empty() ? "" : ", ") + where;
    switch (provenance) {
    case Provenance::retrieved: return text;
    case Provenance::memory: return text + " (from memory)";
    case Provenance::computed: return text + " (computed)";
    case Provenance::estimated: return text + " (estimated)";
    }
    return text;
}

} // namespace jointwright
