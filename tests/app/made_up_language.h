// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A language that nobody speaks, made of what lupdate finds in the source: each text is its English in
// brackets, with an accent on every vowel and 40 % longer. Numbers and days are as in Polish. What is asked
// of it and was not found by lupdate stays English and is noted.

#include <QSet>
#include <QStringList>
#include <QTranslator>

#include <mutex>
#include <vector>

namespace holdfast::app::test {

// Lets lupdate read the source into a file of translations, as docs/decisions/window-language.md says, and
// returns what it complained of.
QString writtenByLupdate(const QString& ts, const QStringList& more = {});

class MadeUpLanguage : public QTranslator {
public:
    // What lupdate wrote, "strings.ts". REQUIRES: it can be read.
    explicit MadeUpLanguage(const QString& ts);

    bool isEmpty() const override { return false; }
    QString translate(const char* context, const char* source, const char* remark, int count) const override;

    bool hasTextThatBegins(const QString& text) const;
    // "Workshop: Press walk", each once.
    QStringList unknown() const;

private:
    QSet<QString> m_known;
    std::vector<QString> m_texts; // in order
    mutable std::mutex m_lock;    // work in the background speaks as well
    mutable QSet<QString> m_unknown;
};

// "[Çút thé fïlm ëëëë]"; a text of numbers, marks and units of measure alone stays.
QString madeUp(const QString& english);

// Words of letters without any accent, which the language cannot have written.
QStringList plainWords(const QString& painted);

} // namespace holdfast::app::test
