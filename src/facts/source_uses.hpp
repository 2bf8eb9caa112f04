#pragma once
// Which figures and statements of the tables hang on which source, and how each of them came.

#include "facts/facts.hpp"

#include <string>
#include <vector>

namespace jointwright {

/// Entries by how they came.
struct ProvenanceCounts {
    int retrieved = 0, memory = 0, computed = 0, estimated = 0;

    int weak() const { return memory + estimated; } ///< not read in any source
    int all() const { return retrieved + memory + computed + estimated; }
    void count(Provenance provenance);
};

/// One entry of the tables: a figure, a row of twelve months, or something said in words.
struct SourceUse {
    std::string file; ///< "woods/teak.toml"
    std::string key;  ///< "dry.shear", or with its place in a list "movement.tangential.2"
    Provenance provenance = Provenance::estimated;
};

struct SourceEntry {
    std::string key, title, short_form, note;
    std::string formula; ///< what the program itself takes from it, or empty: "torsion of a rectangular bar"
    ProvenanceCounts counts;
    std::vector<SourceUse> uses; ///< in the order of the files
};

/// Every source of sources.toml, by its key; one that gives a formula alone has no uses.
/// @throws BrokenData  a table is no TOML, an entry cites a source that is not there or says no provenance that is known
std::vector<SourceEntry> source_entries(const Facts& facts);

/// The counts of one folder or file of the tables, "woods" or "limits.toml".
ProvenanceCounts counts_of_table(const std::vector<SourceEntry>& sources, std::string_view table);

} // namespace jointwright
