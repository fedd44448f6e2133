// A paper on the screen before it is printed: readable from where one stands, with print, PDF and
// plain text one press away.
#pragma once

#include "views/reports/paper.h"

#include <QDialog>

class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class TextLabel;

class PaperView : public QDialog
{
    Q_OBJECT

public:
    explicit PaperView(const Paper &paper, QWidget *parent = nullptr);
    [[nodiscard]] const Paper &paper() const { return m_paper; }
    // A further act of the sheet, marked as the main one.
    QPushButton *addAct(const QString &text);
    // Plain text, as it is copied.
    [[nodiscard]] QString text() const;
    // Used by the PDF button after its file dialog.
    bool saveTo(const QString &path);

private:
    void buildText(QVBoxLayout *column);
    void savePdf();

    Paper m_paper;
    TextLabel *m_said = nullptr;
    QWidget *m_acts = nullptr;
};

} // namespace rickyard::views
