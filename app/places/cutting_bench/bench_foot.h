// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Below the bench: the decal at hand in words, and the keys that move it.

#include <QWidget>

namespace holdfast::app {

class ElidingLabel;
class Label;
class BenchModel;

class BenchFoot : public QWidget {
    Q_OBJECT

public:
    explicit BenchFoot(const BenchModel& model, QWidget* parent = nullptr);

    void refresh();
    // The keys are shown where there is room for them.
    QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void showKeys();

    const BenchModel& m_model;
    ElidingLabel* m_title = nullptr;
    Label* m_place = nullptr;
    Label* m_size = nullptr;
    QWidget* m_keys = nullptr;
};

} // namespace holdfast::app
