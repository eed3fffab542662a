// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/run.h"

int main(int argc, char** argv) {
    return holdfast::app::run(argc, argv);
}
