using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laydown.Store.Migrations
{
    /// <inheritdoc />
    public partial class Log : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Log",
                columns: table => new
                {
                    Number = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    AtSeconds = table.Column<long>(type: "INTEGER", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    RunId = table.Column<string>(type: "TEXT", nullable: true),
                    PressId = table.Column<string>(type: "TEXT", nullable: false),
                    Struck = table.Column<bool>(type: "INTEGER", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Log", x => x.Number);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Log_AtSeconds",
                table: "Log",
                column: "AtSeconds");

            migrationBuilder.CreateIndex(
                name: "IX_Log_Kind_AtSeconds",
                table: "Log",
                columns: new[] { "Kind", "AtSeconds" });

            migrationBuilder.CreateIndex(
                name: "IX_Log_PressId_AtSeconds",
                table: "Log",
                columns: new[] { "PressId", "AtSeconds" });

            migrationBuilder.CreateIndex(
                name: "IX_Log_RunId_Number",
                table: "Log",
                columns: new[] { "RunId", "Number" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Log");
        }
    }
}
