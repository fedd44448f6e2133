// The main window as a person drives it: pages by key, undo by name, a name for every control.
#include "app/window/main_window.h"
#include "tests/support/registry.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QTemporaryDir>
#include <QtTest/QTest>

using namespace rickyard;

namespace {

const QDateTime kNowUtc(QDate(2026, 11, 25), QTime(12, 0), Qt::UTC);

domain::Instant fixedNow()
{
    return domain::Instant::ofSeconds(kNowUtc.toSecsSinceEpoch());
}

bool takesInput(const QWidget *widget)
{
    return qobject_cast<const QAbstractButton *>(widget) != nullptr ||
           qobject_cast<const QLineEdit *>(widget) != nullptr ||
           qobject_cast<const QComboBox *>(widget) != nullptr ||
           qobject_cast<const QAbstractSpinBox *>(widget) != nullptr ||
           qobject_cast<const QPlainTextEdit *>(widget) != nullptr ||
           qobject_cast<const QAbstractItemView *>(widget) != nullptr;
}

QAction *actionNamed(const QMainWindow &window, const QString &part)
{
    const QList<QMenu *> menus = window.menuBar()->findChildren<QMenu *>();
    for (const QMenu *menu : menus)
        for (QAction *action : menu->actions())
            if (action->text().contains(part))
                return action;
    return nullptr;
}

} // namespace

class TstWindow : public QObject
{
    Q_OBJECT

private Q_SLOTS:
    void init();
    void cleanup();
    void keysOpenThePages();
    void undoNamesTheAction();
    void remembersItsPage();
    void everyControlHasAName();

private:
    void openWindow();
    std::unique_ptr<QTemporaryDir> m_folder;
    std::unique_ptr<app::MainWindow> m_window;
};

void TstWindow::openWindow()
{
    auto workspace =
        workspace::Workspace::open(m_folder->filePath(QStringLiteral("yard.rickyard")), kNowUtc);
    QVERIFY2(workspace.ok(), qPrintable(workspace.message()));
    m_window = std::make_unique<app::MainWindow>(
        std::move(workspace.value()), fixedNow,
        std::make_unique<QSettings>(m_folder->filePath(QStringLiteral("settings.ini")),
                                    QSettings::IniFormat));
    m_window->show();
    QVERIFY(QTest::qWaitForWindowExposed(m_window.get()));
}

void TstWindow::init()
{
    m_folder = std::make_unique<QTemporaryDir>();
    openWindow();
}

void TstWindow::cleanup()
{
    m_window.reset();
}

void TstWindow::keysOpenThePages()
{
    m_window->activateWindow();
    for (int i = 6; i >= 0; --i) {
        QTest::keyClick(m_window.get(), static_cast<Qt::Key>(Qt::Key_1 + i), Qt::ControlModifier);
        QCOMPARE(m_window->currentPage(), i);
    }
}

void TstWindow::undoNamesTheAction()
{
    domain::Supplier supplier;
    supplier.name = QStringLiteral("Invented Wood");
    QVERIFY(m_window->verbs().add(supplier).ok());
    QAction *undo = actionNamed(*m_window, QStringLiteral("Undo"));
    QVERIFY(undo != nullptr);
    QVERIFY2(undo->text().contains(QStringLiteral("add supplier")), qPrintable(undo->text()));
    undo->trigger();
    QVERIFY(m_window->verbs().books().suppliers.isEmpty());
    QAction *redo = actionNamed(*m_window, QStringLiteral("Redo"));
    QVERIFY2(redo->text().contains(QStringLiteral("add supplier")), qPrintable(redo->text()));
    redo->trigger();
    QCOMPARE(m_window->verbs().books().suppliers.size(), 1);
}

void TstWindow::remembersItsPage()
{
    m_window->openPage(5);
    m_window->close();
    m_window.reset();
    openWindow();
    QCOMPARE(m_window->currentPage(), 5);
}

void TstWindow::everyControlHasAName()
{
    QStringList nameless;
    int seen = 0;
    for (int i = 0; i < 7; ++i) {
        const QList<QWidget *> widgets = m_window->page(i)->findChildren<QWidget *>();
        for (const QWidget *widget : widgets) {
            // Parts of a composite control (a spin box's own line, a calendar's cells) are read as
            // the control they belong to; what a page keeps hidden is not there to be named.
            const bool part = widget->inherits("QComboBoxListView") || widget->isHidden() ||
                              widget->objectName().startsWith(QLatin1String("qt_")) ||
                              (widget->parentWidget() != nullptr &&
                               (qobject_cast<QAbstractSpinBox *>(widget->parentWidget()) ||
                                qobject_cast<QComboBox *>(widget->parentWidget()) ||
                                qobject_cast<QLineEdit *>(widget->parentWidget()) ||
                                qobject_cast<QAbstractItemView *>(widget->parentWidget())));
            if (part || !takesInput(widget))
                continue;
            ++seen;
            const auto *button = qobject_cast<const QAbstractButton *>(widget);
            if (widget->accessibleName().isEmpty() &&
                (button == nullptr || button->text().isEmpty()))
                nameless << QStringLiteral("page %1: %2 %3")
                                .arg(i)
                                .arg(QLatin1String(widget->metaObject()->className()),
                                     widget->objectName());
        }
    }
    QVERIFY(seen > 50);
    QVERIFY2(nameless.isEmpty(), qPrintable(nameless.join(QLatin1Char('\n'))));
}

RICKYARD_TEST(TstWindow)
#include "tst_window.moc"
