// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/floors.h"

#include <algorithm>
#include <array>
#include <fstream>
#include <optional>
#include <set>
#include <sstream>
#include <tuple>

namespace holdfast {

namespace {

constexpr std::array<std::string_view, 3> kLayers{"core", "db", "app"}; // the lowest first

std::string layerOf(std::string_view folder) {
    return std::string{folder.substr(0, folder.find('/'))};
}

// How high a floor is in the whole of the source: its layer first.
struct Height {
    std::ptrdiff_t layer = 0;
    int floor = 0;

    auto operator<=>(const Height&) const = default;
};

Height heightOf(const ListedFolder& listed) {
    return {std::ranges::find(kLayers, layerOf(listed.folder)) - kLayers.begin(), listed.floor};
}

// "core/trade/money.h" is in "core/trade".
std::string folderOf(std::string_view file) {
    const std::size_t slash = file.rfind('/');
    return std::string{slash == std::string_view::npos ? std::string_view{} : file.substr(0, slash)};
}

bool isNamedBy(const ListedFolder& listed, std::string_view folder) {
    return listed.folder == folder ||
           (listed.folder.ends_with("/*") && listed.folder == folderOf(folder) + "/*");
}

std::optional<Height> heightOf(const std::vector<ListedFolder>& list, std::string_view folder) {
    const auto found =
        std::ranges::find_if(list, [&](const ListedFolder& listed) { return isNamedBy(listed, folder); });
    return found == list.end() ? std::nullopt : std::optional{heightOf(*found)};
}

// The file that a line includes in quotes; empty: it includes none.
std::string includedBy(std::string_view line) {
    constexpr std::string_view kInclude = "#include \"";
    const std::size_t begin = line.find_first_not_of(' ');
    if (begin == std::string_view::npos || !line.substr(begin).starts_with(kInclude))
        return {};
    line.remove_prefix(begin + kInclude.size());
    return std::string{line.substr(0, line.find('"'))};
}

std::vector<std::filesystem::path> sourcesIn(const std::filesystem::path& tree) {
    std::vector<std::filesystem::path> found;
    for (const std::string_view layer : kLayers) {
        std::error_code isMissing;
        for (const auto& entry : std::filesystem::recursive_directory_iterator{tree / layer, isMissing})
            if (entry.path().extension() == ".h" || entry.path().extension() == ".cpp")
                found.push_back(entry.path().lexically_relative(tree));
    }
    std::ranges::sort(found);
    return found;
}

class FloorCheck {
public:
    FloorCheck(const std::filesystem::path& tree, const std::vector<ListedFolder>& list)
        : m_tree(tree)
        , m_list(list) {}

    std::vector<std::string> faults() {
        checkOrder();
        for (const std::filesystem::path& source : sourcesIn(m_tree))
            checkSource(source.generic_string());
        for (const ListedFolder& listed : m_list)
            if (std::ranges::none_of(m_folders,
                                     [&](const std::string& folder) { return isNamedBy(listed, folder); }))
                m_faults.push_back(listed.folder + " is listed, and there is no file in it.");
        return std::move(m_faults);
    }

private:
    void checkOrder() {
        for (std::size_t at = 1; at < m_list.size(); ++at) {
            const bool isSameLayer = layerOf(m_list[at].folder) == layerOf(m_list[at - 1].folder);
            if (heightOf(m_list[at]) < heightOf(m_list[at - 1]) || (!isSameLayer && m_list[at].floor != 1))
                m_faults.push_back(m_list[at].folder + " is listed out of order.");
        }
    }

    void checkSource(const std::string& file) {
        const std::string folder = folderOf(file);
        m_folders.insert(folder);
        const auto own = heightOf(m_list, folder);
        if (!own) {
            m_faults.push_back(file + " is in a folder that the list does not name.");
            return;
        }
        std::ifstream text{m_tree / file};
        int number = 0;
        for (std::string line; std::getline(text, line);) {
            ++number;
            const std::string included = includedBy(line);
            if (!included.empty() && folderOf(included) != folder)
                checkInclude(file + ":" + std::to_string(number), *own, included);
        }
    }

    void checkInclude(const std::string& where, const Height& own, const std::string& included) {
        const auto other = heightOf(m_list, folderOf(included));
        if (!other)
            m_faults.push_back(where + " includes " + included + ", whose folder the list does not name.");
        else if (*other > own)
            m_faults.push_back(where + " includes " + included + ", which is on a higher floor.");
        else if (*other == own)
            m_faults.push_back(where + " includes " + included + ", which is on the same floor.");
    }

    const std::filesystem::path& m_tree;
    const std::vector<ListedFolder>& m_list;
    std::set<std::string> m_folders; // that have files
    std::vector<std::string> m_faults;
};

} // namespace

std::vector<ListedFolder> listedFolders(std::string_view text) {
    std::vector<ListedFolder> list;
    std::istringstream lines{std::string{text}};
    for (std::string line; std::getline(lines, line);) {
        std::istringstream words{line};
        ListedFolder listed;
        if (words >> listed.floor >> listed.folder &&
            std::ranges::find(kLayers, layerOf(listed.folder)) != kLayers.end())
            list.push_back(std::move(listed));
    }
    return list;
}

std::vector<std::string> faultsOfFloors(const std::filesystem::path& tree,
                                        const std::vector<ListedFolder>& list) {
    return FloorCheck{tree, list}.faults();
}

} // namespace holdfast
