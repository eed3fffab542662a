// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A logger's file as text. Loggers write UTF-8 or UTF-16 (either byte order, with a byte order mark or
// without); any other code of one byte a letter is left as it is, for the figures are the same in all of
// them.

#include <string>
#include <string_view>

namespace holdfast {

class LogText {
public:
    // REQUIRES: the file's content outlives this.
    explicit LogText(std::string_view file);

    bool isText() const { return m_isText; }
    std::string_view utf8() const { return m_isConverted ? std::string_view{m_converted} : m_plain; }

private:
    void convert(std::string_view utf16, bool lowByteFirst);

    std::string_view m_plain;
    std::string m_converted;
    bool m_isConverted = false;
    bool m_isText = true;
};

} // namespace holdfast
