// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What was asked on the command line.
//
//     holdfast [FILE]
//     holdfast [--shop FILE | --demo] [--on YYYY-MM-DD] [VERB]
//     VERB: report walk|use-first|holds|blanks|buy|promise|cut|figures
//                [--json | --csv], tour DIR [--scale 1|2],
//           papers DIR, check, mend, save-what-can-be NEW, backup FILE, backups, put-back FILE [--yes],
//           export DIR, import FILE, take-orders FILE [--yes], due-days FILE [--nameless],
//           forget CUSTOMER

#include "core/trade/dates.h"
#include "core/trade/result.h"

#include <filesystem>
#include <optional>
#include <span>
#include <string>

namespace holdfast::app {

enum class Verb {
    Window,
    Report,
    Tour,
    Papers,
    Check,
    Mend,
    Save,
    Backup,
    Backups,
    PutBack,
    Export,
    Import,
    TakeOrders,
    DueDays,
    Forget,
    Help,
    Version
};
enum class ReportName { Walk, UseFirst, Holds, Blanks, Buy, Promise, Cut, Figures };
// Reads more of the shop than what is there now.
bool needsFigures(ReportName report);

struct Arguments {
    std::optional<std::filesystem::path> shop; // none: the usual one
    bool isDemo = false;
    std::optional<LocalDate> on;
    Verb verb = Verb::Window;
    ReportName report = ReportName::Walk;
    bool asJson = false;
    bool asCsv = false;           // comma-separated values
    bool isSure = false;          // put-back and take-orders do it and do not only say what it would be
    bool isNameless = false;      // due-days leaves out names
    std::filesystem::path target; // of tour, papers, backup, export, save and due-days; what others read
    int scale = 1;
};

// `words` are those after the program's name. Options may come before or after the verb. A word that is no
// verb and looks like the name of a file (it has a dot or a slash) is the shop to open in the window. An
// error is wrong usage, said in one line.
Result<Arguments> readArguments(std::span<const std::string> words);

std::string usage();

} // namespace holdfast::app
