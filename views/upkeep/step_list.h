// The steps of a piece of work as large ticks: by mouse, by the space bar, the arrows go from one
// to the next. A tick moves on to the step that follows.
#pragma once

#include <QAbstractButton>
#include <QVector>

class QVBoxLayout;

namespace rickyard::views {

class StepTick : public QAbstractButton
{
    Q_OBJECT

public:
    StepTick(int number, const QString &text, QWidget *parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;

Q_SIGNALS:
    void stepped(int by);

protected:
    void paintEvent(QPaintEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;

private:
    [[nodiscard]] QRect wordsIn(int width) const;

    QString m_number;
};

class StepList : public QWidget
{
    Q_OBJECT

public:
    explicit StepList(QWidget *parent = nullptr);
    void setSteps(const QStringList &steps);
    // Without saying that a person ticked it.
    void setTicked(const QVector<int> &steps);
    void setEditable(bool editable);
    [[nodiscard]] int count() const { return static_cast<int>(m_ticks.size()); }
    [[nodiscard]] StepTick *tick(int step) const { return m_ticks.value(step); }
    // The first that is not ticked.
    void focusNext();

Q_SIGNALS:
    void ticked(int step, bool on);

private:
    QVBoxLayout *m_column;
    QStringList m_steps;
    QVector<StepTick *> m_ticks;
};

} // namespace rickyard::views
