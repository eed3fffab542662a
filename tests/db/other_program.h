// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A second program, made by fork: one that is gone without a good-bye, or that runs as somebody with few
// rights.

#include <gtest/gtest.h>

#include <filesystem>
#include <functional>
#include <string>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

namespace holdfast::db::testing {

using SaysWords = std::function<std::string()>;

// What `work` says in a child that then ends without closing anything.
inline std::string saidByOtherProgram(const SaysWords& work) {
    int ends[2] = {-1, -1};
    if (pipe(ends) != 0)
        return "no pipe";
    const pid_t child = fork();
    if (child == 0) {
        const std::string words = work();
        const auto written = ::write(ends[1], words.data(), words.size());
        _exit(written == static_cast<ssize_t>(words.size()) ? 0 : 1);
    }
    close(ends[1]);
    std::string words;
    char part[512];
    for (ssize_t length = 0; (length = ::read(ends[0], part, sizeof part)) > 0;)
        words.append(part, static_cast<std::size_t>(length));
    close(ends[0]);
    int status = 0;
    waitpid(child, &status, 0);
    EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0) << words;
    return words;
}

// The same without root's rights, if we have them. `folder` has the mode while it runs.
inline std::string saidByNobody(const std::filesystem::path& folder, mode_t folderMode,
                                const SaysWords& work) {
    constexpr uid_t kNobody = 65534;
    struct stat before{};
    stat(folder.c_str(), &before);
    chmod(folder.c_str(), folderMode);
    const std::string words = saidByOtherProgram([&]() -> std::string {
        if (geteuid() == 0 &&
            (setresgid(kNobody, kNobody, kNobody) != 0 || setresuid(kNobody, kNobody, kNobody) != 0))
            return "still root";
        return work();
    });
    chmod(folder.c_str(), before.st_mode & 07777);
    return words;
}

} // namespace holdfast::db::testing
