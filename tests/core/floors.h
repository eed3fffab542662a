// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The floors of the source, as DEVELOPERS.md lists them, against its include lines.

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast {

// A folder on its floor. "app/places/*" stands for each folder in app/places.
struct ListedFolder {
    int floor = 0;
    std::string folder; // "core/trade"
};

// The lines "floor folder what is in it" of a text; any other line is passed over.
std::vector<ListedFolder> listedFolders(std::string_view text);

// What is wrong with the headers and sources in the folders core, db and app of `tree`, a sentence each:
//   - an include of a higher floor, of another folder on the same floor, or of a folder that is not listed
//   - a file in a folder that is not listed; a listed folder without files
//   - a list whose floors do not rise, layer by layer
std::vector<std::string> faultsOfFloors(const std::filesystem::path& tree,
                                        const std::vector<ListedFolder>& list);

} // namespace holdfast
